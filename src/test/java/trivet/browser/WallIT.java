package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Cookie;
import org.openqa.selenium.WebElement;

/** The sheet on the wall: what is due, its three sounds and their daily test, a screen that stays awake, and what came due while it slept. */
class WallIT extends InBrowser {

    @Test
    void it_shows_what_is_due_is_heard_and_says_once_what_it_missed() throws Exception {
        browser.get(service.address() + "/");
        browser.manage().addCookie(new Cookie.Builder("trivet-tablet", Files.readString(data.resolve("first-tablet.token")).strip()).path("/").isHttpOnly(true).build());
        browser.executeCdpCommand("Browser.grantPermissions", Map.of("permissions", List.of("wakeLockScreen")));
        browser.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source",
                "window.tones = []; const make = AudioContext.prototype.createOscillator; AudioContext.prototype.createOscillator = function () { const tone = make.call(this), start = tone.start.bind(tone); tone.start = at => { tones.push(tone.frequency.value); start(at); }; return tone; };"));
        browser.get(service.address() + "/wall");
        find(".wall-clock");
        List<WebElement> due = browser.findElements(By.cssSelector(".wall section:first-of-type .task time"));
        assertFalse(due.isEmpty(), "the demo always has something to do");
        assertTrue(browser.findElement(By.cssSelector("[data-wall-state]")).getDomAttribute("data-due").matches("\\d+"));
        until(() -> !browser.findElement(By.cssSelector("[data-awake]")).getText().isBlank());
        assertEquals("This screen stays awake.", browser.findElement(By.cssSelector("[data-awake]")).getText());
        assertEquals(List.of(), browser.executeScript("return tones"), "nothing sounds before somebody has touched it");
        shown("[data-sound-play]").click();
        until(() -> browser.findElement(By.cssSelector("[data-sound-heard]")).isDisplayed());
        assertEquals(List.of(660L, 660L, 660L, 880L, 1100L, 1320L), browser.executeScript("return tones"), "once, twice, and three rising");
        shown("[data-sound-heard]").click();
        until(() -> count("SELECT count(*) FROM record WHERE kind = 'sound-tested'") == 1);
        browser.navigate().refresh();
        find(".wall-clock");
        assertTrue(browser.findElements(By.cssSelector("[data-sound-untested]")).isEmpty(), "it was tested today");
        browser.executeScript("localStorage.setItem('trivet.wall', Date.now() - 12 * 3600000)");
        browser.navigate().refresh();
        shown("[data-missed]");
        List<String> missed = browser.findElements(By.cssSelector("[data-missed-list] li")).stream().map(WebElement::getText).toList();
        assertFalse(missed.isEmpty());
        shown("[data-missed-read]").click();
        browser.navigate().refresh();
        find(".wall-clock");
        Thread.sleep(1000);
        assertFalse(browser.findElement(By.cssSelector("[data-missed]")).isDisplayed(), "said once");
    }

    @Test
    void which_sound_belongs_to_what() {
        browser.get(service.address() + "/");
        Object sounds = browser.executeAsyncScript("const done = arguments[0], none = { past: 0, due: 1, alarms: 0 }; import('/js/wall.js').then(({ sounding: s }) => done(["
                + "s(null, none, 1e9), s(none, none, 1e9), s(none, { past: 0, due: 2, alarms: 0 }, 0), s(none, { past: 1, due: 2, alarms: 0 }, 0), s(none, { past: 1, due: 1, alarms: 1 }, 0),"
                + "s({ past: 1, due: 1, alarms: 1 }, { past: 1, due: 1, alarms: 1 }, 59999), s({ past: 1, due: 1, alarms: 1 }, { past: 1, due: 1, alarms: 1 }, 60000)].map(String)));");
        assertEquals(List.of("null", "null", "due", "past", "alarm", "null", "alarm"), sounds, "an alarm again each minute until somebody has seen it");
    }

    private static long count(String sql) {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("trivet.db")); Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(sql)) {
            return row.next() ? row.getLong(1) : 0;
        } catch (java.sql.SQLException failed) {
            throw new IllegalStateException(failed);
        }
    }
}
