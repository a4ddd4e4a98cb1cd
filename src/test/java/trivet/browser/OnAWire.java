package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Duration;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.openqa.selenium.Cookie;
import org.openqa.selenium.Dimension;

/** A browser that is the bakery's first tablet, on a wire of the test's own to the service, signed in as Ana and ready to work without a network. */
abstract class OnAWire extends InBrowser {

    static Wire wire;

    @BeforeAll
    static void join() throws Exception {
        wire = new Wire(service.port);
        browser.manage().window().setSize(new Dimension(800, 1280));
        browser.manage().timeouts().scriptTimeout(Duration.ofSeconds(150));
        browser.get(wire.address() + "/");
        browser.manage().addCookie(new Cookie.Builder("trivet-tablet", Files.readString(data.resolve("first-tablet.token")).strip()).path("/").isHttpOnly(true).build());
        browser.get(wire.address() + "/session/pin/ana");
        find(".pad button");
        press("1111");
        until(() -> browser.getCurrentUrl().endsWith("/work"));
        until(() -> Boolean.TRUE.equals(script("const done = arguments[0]; (async () => (await navigator.serviceWorker.ready).active !== null && Boolean(await (await import('/js/tablet/store.js')).shelf.get('kit')))().then(done, () => done(false));")));
    }

    @AfterAll
    static void part() throws IOException {
        if (wire != null) {
            wire.close();
        }
    }

    static Object script(String text, Object... values) {
        return browser.executeAsyncScript(text, values);
    }

    static long number(String sql) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("trivet.db")); Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(sql)) {
            return row.next() ? row.getLong(1) : 0;
        }
    }

    static long waits(String state) {
        return (Long) script("const done = arguments[1]; import('/js/tablet/store.js').then(m => m.store.inState(arguments[0])).then(list => done(list.length));", state);
    }

    static void send() {
        script("const done = arguments[0]; import('/js/tablet/sender.js').then(m => m.flush(true)).then(() => done(true), () => done(false));");
    }

    static void eventually(Condition condition) {
        InBrowser.until(() -> {
            try {
                return condition.met();
            } catch (RuntimeException unready) {
                throw unready;
            } catch (Exception failed) {
                throw new IllegalStateException(failed);
            }
        });
    }

    /** Something that becomes true. */
    interface Condition {
        boolean met() throws Exception;
    }

    /** Runs an asynchronous script and gives what it returns; fails where it throws. */
    static Object run(String body, Object... values) {
        Object result = script("const done = arguments[arguments.length - 1]; (async (...given) => {" + body + "})(...arguments).then(value => done(value ?? true), wrong => done('WRONG ' + (wrong.stack ?? wrong)));", values);
        assertFalse(String.valueOf(result).startsWith("WRONG"), () -> String.valueOf(result));
        return result;
    }
}
