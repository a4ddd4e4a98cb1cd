package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Cookie;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/**
 * Every page in every language: axe, reflow at 320 px (WCAG 2.2, 1.4.10) and at 640 px, which is 1,280 at 200 % (1.4.4); the keyboard alone (2.1.1, 2.1.2,
 * 2.4.7), a name for everything that can be worked (4.1.2), and edges that remain where a system forces its own colours.
 */
class EverybodyIT extends InBrowser {

    private static final List<String> OPEN = List.of("/", "/session/pin/ana", "/session/owner", "/session/language", "/calculators", "/join", "/join/test");
    private static final List<String> DAY = List.of("/work", "/cooling", "/batches/new", "/units", "/units/fridge-1", "/probes", "/probes/P1", "/deviations", "/programmes/allergens", "/sheets", "/sheets/deep-quiche",
            "/sheets/deep-quiche/enter", "/month", "/days/2026-10-09", "/steps", "/shift-end", "/wall", "/alarms", "/waiting", "/reports/range?from=2026-10-08&to=2026-10-09");
    private static final List<String> OWNER = List.of("/owner", "/owner/rulebook", "/owner/rulebook?id=ireland", "/owner/tablets", "/owner/notices", "/owner/review", "/owner/week", "/owner/plans", "/owner/plans/deep-quiche",
            "/owner/plans/deep-quiche/flow?step=bake", "/owner/plans/deep-quiche/flow/walk", "/owner/plans/deep-quiche/hazards", "/owner/plans/deep-quiche/hazards/both-trees", "/owner/plans/deep-quiche/hazards/bake-salmonella",
            "/owner/plans/deep-quiche/part/recipe", "/owner/plans/deep-quiche/part/controls?item=cook", "/owner/plans/deep-quiche/part/rooms", "/owner/plans/deep-quiche/part/programmes?item=gluten", "/owner/plans/deep-quiche/approval", "/owner/plans/deep-quiche/words?language=pl");

    @BeforeEach
    void enter() throws Exception {
        browser.get(service.address() + "/session/owner");
        browser.manage().deleteAllCookies();
        browser.get(service.address() + "/session/owner");
        browser.manage().addCookie(new Cookie.Builder("trivet-tablet", Files.readString(data.resolve("first-tablet.token")).strip()).path("/").isHttpOnly(true).build());
        find("[name=password]").sendKeys("thornfold-demo");
        find("form:has([name=password])").submit();
        until(() -> !browser.getCurrentUrl().contains("/session/"));
    }

    @AfterEach
    void asItWas() {
        width(1280);
        browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of()));
        speak("en");
    }

    private static void speak(String language) {
        browser.get(service.address() + "/session/language");
        find("[name=language][value=" + language + "]").click();
        until(() -> browser.getCurrentUrl().endsWith("/work"));
    }

    /** The addresses, and those of one batch, its readings and one deviation that the day's page leads to. */
    private static List<String> pages() {
        List<String> all = new ArrayList<>(OPEN);
        all.addAll(DAY);
        browser.get(service.address() + "/work");
        String batch = browser.findElements(By.cssSelector("a[href^='/batches/']")).stream().map(link -> link.getDomAttribute("href")).filter(to -> to.matches("/batches/[0-9a-f-]{36}.*")).map(to -> to.substring(0, "/batches/".length() + 36)).findFirst().orElseThrow();
        all.addAll(List.of(batch, batch + "/core", batch + "/cooling", batch + "/food", batch + "/own/label"));
        browser.get(service.address() + "/deviations");
        browser.findElements(By.cssSelector("a[href^='/deviations/']")).stream().map(link -> link.getDomAttribute("href")).findFirst().ifPresent(all::add);
        all.addAll(OWNER);
        return all;
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "es", "pl", "it", "ar"})
    void every_page_in_every_language(String language) {
        speak(language);
        List<String> wrong = new ArrayList<>();
        width(1280);
        for (String page : pages()) {
            browser.get(service.address() + page);
            wrong.addAll(wrongIn(language, page, 1280));
        }
        assertTrue(wrong.isEmpty(), () -> String.join("\n", wrong));
    }

    @Test
    void the_keyboard_reaches_everything_shows_where_it_is_and_everything_has_a_name() {
        List<String> wrong = new ArrayList<>();
        for (String page : pages()) {
            browser.get(service.address() + page);
            browser.executeScript("window.stops = [...document.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex=\"0\"]')].filter(e => e.offsetParent !== null && !e.disabled && !e.closest('[inert]') && e.checkVisibility()); document.activeElement?.blur();");
            long stops = (Long) browser.executeScript("return new Set(stops.map(e => e.type === 'radio' ? e.name + e.form?.id : e)).size");
            browser.executeScript("window.reached = new Set(); window.unseen = []; document.addEventListener('focusin', ({ target: e }) => { reached.add(e); const s = getComputedStyle(e); if (s.outlineStyle === 'none' || parseFloat(s.outlineWidth) < 2) unseen.push(e.outerHTML.slice(0, 100)); });");
            for (int i = 0; i < 3 * stops + 3 && !Boolean.TRUE.equals(browser.executeScript("return stops.every(e => reached.has(e) || e.type === 'radio')")); i++) {
                browser.switchTo().activeElement().sendKeys(Keys.TAB);
            }
            Object missed = browser.executeScript("const met = e => reached.has(e) || (e.type === 'radio' && stops.some(o => o.type === 'radio' && o.name === e.name && reached.has(o))); return stops.filter(e => !met(e) && document.contains(e)).map(e => e.outerHTML.slice(0, 100)).join(' | ')");
            if (!"".equals(missed)) {
                wrong.add(page + " never reached: " + missed);
            }
            Object unseen = browser.executeScript("return unseen.slice(0, 3).join(' | ')");
            if (!"".equals(unseen)) {
                wrong.add(page + " does not show the focus: " + unseen);
            }
            nameless().forEach(node -> wrong.add(page + " has no name for a " + node));
        }
        assertTrue(wrong.isEmpty(), () -> String.join("\n", wrong));
    }

    /** The roles of what can be focused and has no name in the accessibility tree of the browser. */
    @SuppressWarnings("unchecked")
    private static List<String> nameless() {
        List<String> without = new ArrayList<>();
        for (Map<String, Object> node : (List<Map<String, Object>>) browser.executeCdpCommand("Accessibility.getFullAXTree", Map.of()).get("nodes")) {
            String role = String.valueOf(((Map<String, Object>) node.getOrDefault("role", Map.of())).get("value"));
            boolean focusable = ((List<Map<String, Object>>) node.getOrDefault("properties", List.of())).stream().anyMatch(p -> p.get("name").equals("focusable"));
            String name = String.valueOf(((Map<String, Object>) node.getOrDefault("name", Map.of())).getOrDefault("value", ""));
            if (focusable && name.isBlank() && List.of("button", "link", "textbox", "combobox", "checkbox", "radio", "spinbutton", "Date", "DateTime", "DisclosureTriangle").contains(role)) {
                without.add(role);
            }
        }
        return without;
    }

    @Test
    void a_batch_is_begun_and_its_core_is_read_by_the_keyboard_alone() {
        browser.get(service.address() + "/batches/new");
        tabTo("select[name=product]");
        browser.switchTo().activeElement().sendKeys("Deep");
        tabTo("form[data-record] button.primary");
        browser.switchTo().activeElement().sendKeys(Keys.ENTER);
        until(() -> browser.getCurrentUrl().matches(".*/batches/[0-9a-f-]{36}"));
        String batch = browser.getCurrentUrl();
        browser.get(batch + "/core");
        find(".pad button");
        tabTo("[data-value]");
        browser.switchTo().activeElement().sendKeys("78,5");
        tabTo("form[data-reading] button.primary");
        browser.switchTo().activeElement().sendKeys(Keys.ENTER);
        assertTrue(shown(".said").getText().contains("78.5"), shown(".said").getText());
        assertEquals("status", browser.executeScript("return document.querySelector('[data-said]').getAttribute('role') ?? document.querySelector('[data-said] [role]')?.getAttribute('role') ?? document.activeElement.closest('[role]')?.getAttribute('role')"), "a screen reader says the verdict");
    }

    private static void tabTo(String css) {
        browser.executeScript("document.activeElement?.blur()");
        for (int i = 0; i < 80; i++) {
            browser.switchTo().activeElement().sendKeys(Keys.TAB);
            if (Boolean.TRUE.equals(browser.executeScript("return document.activeElement.matches(arguments[0])", css))) {
                return;
            }
        }
        throw new AssertionError("The tab key never comes to " + css + " on " + browser.getCurrentUrl());
    }

    @Test
    void what_can_be_touched_keeps_an_edge_in_forced_colours_and_nothing_moves_where_less_motion_is_asked_for() throws Exception {
        browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of(Map.of("name", "forced-colors", "value", "active"), Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
        List<String> wrong = new ArrayList<>();
        for (String page : pages()) {
            browser.get(service.address() + page);
            Object flat = browser.executeScript("return [...document.querySelectorAll('a.key, button, a.tile, a.task, input:not([type=hidden], [type=radio], [type=checkbox], [type=file]), select, textarea, .verdict')].filter(e => e.offsetParent !== null && parseFloat(getComputedStyle(e).borderTopWidth) < 1).map(e => e.outerHTML.slice(0, 100)).join(' | ')");
            if (!"".equals(flat)) {
                wrong.add(page + ": " + flat);
            }
            Object moves = browser.executeScript("return document.getAnimations().length");
            if (!moves.equals(0L)) {
                wrong.add(page + " moves");
            }
        }
        picture("forced-colours");
        assertTrue(wrong.isEmpty(), () -> String.join("\n", wrong));
    }
}
