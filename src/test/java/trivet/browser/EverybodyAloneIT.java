package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The tablet's own pages, without a network, in every language: axe, the language of whoever stands there, and reflow at 320 px and 640 px. */
class EverybodyAloneIT extends OnAWire {

    @AfterEach
    void asItWas() {
        width(800);
        wire.cut(false);
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "es", "pl", "it", "ar"})
    void every_page_that_a_tablet_has_alone(String language) {
        signIn();
        browser.get(wire.address() + "/session/language");
        find("[name=language][value=" + language + "]").click();
        until(() -> browser.getCurrentUrl().endsWith("/work"));
        run("await (await import('/js/tablet/kit.js')).refresh();");
        String batch = (String) run("const { shelf } = await import('/js/tablet/store.js'), { body } = await shelf.get('kit'); return body.batches[0].id;");
        String deviation = (String) run("const { shelf } = await import('/js/tablet/store.js'), { body } = await shelf.get('kit'); return body.batches.flatMap(one => one.deviations).map(one => one.id)[0] ?? '';");
        wire.cut(true);
        List<String> wrong = new ArrayList<>();
        width(800);
        for (String page : List.of("/work", "/cooling", "/batches/new", "/batches/" + batch, "/batches/" + batch + "/core", "/batches/" + batch + "/cooling", "/batches/" + batch + "/own/label", "/batches/" + batch + "/photo", "/units", "/units/fridge-1",
                "/probes", "/probes/P1", "/programmes/allergens", "/deviations", deviation.isEmpty() ? "/deviations" : "/deviations/" + deviation, "/shift-end", "/waiting", "/nowhere-known")) {
            browser.get(wire.address() + page);
            find("body[data-shell] main h1");
            wrong.addAll(wrongIn(language, page, 800));
        }
        assertTrue(wrong.isEmpty(), () -> String.join("\n", wrong));
    }

    private static void signIn() {
        browser.get(wire.address() + "/session/pin/ana");
        find(".pad button");
        press("1111");
        until(() -> browser.getCurrentUrl().endsWith("/work"));
    }
}
