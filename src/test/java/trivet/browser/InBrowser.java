package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertTrue;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import trivet.start.Service;

/** A browser of a tablet's size in front of a service with a demo bakery of its own. */
abstract class InBrowser {

    @TempDir
    static Path data;
    static Service service;
    static ChromeDriver browser;

    @BeforeAll
    static void open() throws Exception {
        Chromium.needed();
        service = Service.start(data, "-Dtrivet.demo=true");
        browser = Chromium.open();
        Files.createDirectories(Path.of("target/screens"));
    }

    @AfterAll
    static void close() throws Exception {
        if (browser != null) {
            browser.quit();
        }
        if (service != null) {
            service.close();
        }
    }

    static void picture(String name) throws Exception {
        Files.write(Path.of("target/screens/" + name + ".png"), browser.getScreenshotAs(OutputType.BYTES));
    }

    static WebElement find(String css) {
        return new WebDriverWait(browser, Duration.ofSeconds(15)).ignoring(org.openqa.selenium.StaleElementReferenceException.class).until(b -> b.findElement(By.cssSelector(css)));
    }

    static WebElement shown(String css) {
        return new WebDriverWait(browser, Duration.ofSeconds(15)).ignoring(org.openqa.selenium.StaleElementReferenceException.class).until(b -> b.findElements(By.cssSelector(css)).stream().filter(WebElement::isDisplayed).findFirst().orElse(null));
    }

    static void key(String text) {
        new WebDriverWait(browser, Duration.ofSeconds(15)).ignoring(org.openqa.selenium.StaleElementReferenceException.class).until(b -> b.findElements(By.cssSelector("a.key, button")).stream()
                .filter(e -> e.isDisplayed() && e.getText().equals(text)).findFirst().orElse(null)).click();
    }

    static void press(String digits) {
        for (char digit : digits.toCharArray()) {
            new WebDriverWait(browser, Duration.ofSeconds(15)).ignoring(org.openqa.selenium.StaleElementReferenceException.class).until(b -> b.findElements(By.cssSelector(".pad button")).stream()
                    .filter(e -> e.getText().equals(String.valueOf(digit))).findFirst().orElse(null)).click();
        }
    }

    static String probe(String value, boolean hold) throws Exception {
        find(".pad button");
        if (hold) {
            shown("[data-hold]").click();
            new WebDriverWait(browser, Duration.ofSeconds(45)).until(b -> b.findElement(By.cssSelector("[data-hold]")).getText().startsWith("Held"));
        }
        press(value);
        key("Keep this reading");
        String said = shown(".said").getText();
        picture(browser.manage().window().getSize().width + "-said-" + value.replace(",", "_"));
        shown("[data-after] .primary").click();
        return said;
    }

    static void signIn(String person, String pin) {
        browser.get(service.address() + "/session/pin/" + person);
        find(".pad button");
        press(pin);
        waitFor("h1");
        until(() -> !browser.getCurrentUrl().contains("/session/"));
    }

    static void until(java.util.function.BooleanSupplier condition) {
        new WebDriverWait(browser, Duration.ofSeconds(15)).ignoring(org.openqa.selenium.StaleElementReferenceException.class)
                .ignoring(org.openqa.selenium.NoSuchElementException.class).until(b -> condition.getAsBoolean());
    }

    static WebElement waitFor(String css) {
        return shown(css);
    }

    /** Asserts that axe finds nothing wrong with the page that is open (WCAG 2 A and AA). */
    static void accessible(String name) {
        var results = new com.deque.html.axecore.selenium.AxeBuilder().withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")).analyze(browser);
        assertTrue(results.getViolations().isEmpty(), () -> name + ": " + results.getViolations().stream()
                .map(rule -> rule.getId() + " " + rule.getNodes().stream().limit(3).map(node -> String.valueOf(node.getHtml())).toList()).toList());
    }

    /** What is wrong with the page that is open in one language: its language, what axe finds at the width that a tablet has, and how it flows at 640 px and 320 px. */
    static List<String> wrongIn(String language, String page, int tablet) {
        List<String> wrong = new ArrayList<>();
        if (!eventually(() -> language.equals(browser.executeScript("return document.documentElement.lang")))) {
            wrong.add(page + " speaks " + browser.executeScript("return document.documentElement.lang"));
        }
        try {
            accessible(language + " " + page);
        } catch (AssertionError found) {
            wrong.add(found.getMessage());
        }
        for (int pixels : new int[] {640, 320}) {
            width(pixels);
            Long needed = (Long) browser.executeScript("return document.documentElement.scrollWidth");
            if (needed > pixels) {
                wrong.add(page + " needs " + needed + " px at " + pixels + ": " + browser.executeScript("return [...document.querySelectorAll('main *, header *')].filter(e => { const r = e.getBoundingClientRect(); return (r.right > innerWidth + 1 || r.left < -1) && !e.closest('.wide, .drawing, svg'); }).slice(-2).map(e => e.outerHTML.slice(0, 120)).join(' | ')"));
            }
        }
        width(tablet);
        return wrong;
    }

    static void width(int pixels) {
        browser.executeCdpCommand("Emulation.setDeviceMetricsOverride", Map.of("width", pixels, "height", pixels == 800 ? 1280 : 800, "deviceScaleFactor", 1, "mobile", false));
    }

    private static boolean eventually(java.util.function.BooleanSupplier condition) {
        try {
            until(condition);
            return true;
        } catch (org.openqa.selenium.TimeoutException never) {
            return false;
        }
    }

    /** Asserts that every key, choice and field that is shown is at least 15 mm high on a tablet of 160 dots an inch. */
    static void bigEnough(String name) {
        List<String> small = browser.findElements(By.cssSelector("a.key, a.task, button, label.choice, input:not([type=hidden]):not(.choice input), select, textarea, summary, .bar a")).stream().filter(WebElement::isDisplayed)
                .filter(e -> e.getRect().height < 94).map(e -> e.getTagName() + " " + e.getText() + " " + e.getRect().height).toList();
        assertTrue(small.isEmpty(), name + ": " + small);
    }
}
