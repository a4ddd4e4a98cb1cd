package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.WebElement;

/** What happens beside the main path: a round, a correction, a paper sheet, the owner's pages, and taking the demo away. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class EverydayBrowserIT extends InBrowser {

    private static void type(WebElement field, String value) {
        ((JavascriptExecutor) browser).executeScript("arguments[0].value = arguments[1]; arguments[0].dispatchEvent(new Event('input', {bubbles: true}));", field, value);
    }

    @Test
    @Order(1)
    void after_one_entry_the_tiles_come_back_but_a_round_stays_signed_in() throws Exception {
        browser.manage().window().setSize(new Dimension(800, 1280));
        signIn("ana", "1111");
        browser.get(service.address() + "/units/fridge-1");
        press("4,1");
        key("Keep this reading");
        String said = shown(".said").getText();
        assertTrue(said.startsWith("4.1 °C. Within"), said);
        assertTrue(shown("[data-leaving]").getText().contains("Back to the tiles"));
        browser.get(service.address() + "/units");
        key("Begin a round of all of them");
        shown("[data-round]");
        press("4,4");
        key("Keep this reading");
        shown(".said");
        Thread.sleep(1500);
        assertTrue(browser.findElements(By.cssSelector("[data-leaving]")).stream().noneMatch(WebElement::isDisplayed));
        picture("800-round");
        key("Next unit");
        until(() -> browser.getCurrentUrl().endsWith("/units/fridge-2"));
        key("End the round");
        until(() -> browser.getCurrentUrl().equals(service.address() + "/"));
        browser.get(service.address() + "/units");
        assertEquals(service.address() + "/", browser.getCurrentUrl(), "the session has ended");
    }

    @Test
    @Order(2)
    void a_reading_is_corrected_with_another_value_and_both_stay() throws Exception {
        signIn("ben", "2222");
        browser.get(service.address() + "/units/fridge-2");
        press("7,4");
        key("Keep this reading");
        String said = shown(".said").getText();
        assertTrue(said.startsWith("7.4"), said);
        browser.get(service.address() + "/units/fridge-2");
        browser.findElement(By.cssSelector("a[href^='/records/']")).click();
        shown("[data-corrected-value]");
        accessible("correct");
        key("Keep this correction");
        assertTrue(browser.findElements(By.cssSelector(".said")).stream().noneMatch(WebElement::isDisplayed), "a reason is asked for");
        type(browser.findElement(By.cssSelector("[data-corrected-value]")), "4.7");
        type(browser.findElement(By.cssSelector("[name=reason]")), "Typed 7 for 4");
        picture("800-correct");
        key("Keep this correction");
        until(() -> browser.getCurrentUrl().endsWith("/units/fridge-2"));
        assertTrue(shown("main").getText().contains("4.7 °C"));
    }

    @Test
    @Order(3)
    void a_filled_in_sheet_is_written_later_and_counts_when_another_accepts_it() throws Exception {
        signIn("ana", "1111");
        browser.get(service.address() + "/sheets/deep-quiche");
        accessible("sheet");
        picture("800-sheet");
        String number = browser.findElement(By.cssSelector("p b")).getText().replace("Sheet ", "");
        key("Type a filled-in sheet in");
        accessible("enter");
        ZoneId zone = ZoneId.of("Europe/London");
        ZonedDateTime start = ZonedDateTime.now(zone).minusHours(5);
        LocalDate day = start.toLocalTime().isBefore(LocalTime.of(3, 0)) ? start.toLocalDate().minusDays(1) : start.toLocalDate();
        type(browser.findElement(By.name("day")), day.toString());
        clock("batch-started", 0, start);
        type(browser.findElement(By.cssSelector("[data-row='batch-started'] [data-name=trays]")), "2");
        type(browser.findElement(By.cssSelector("[data-row='batch-started'] [data-name=pieces]")), "24");
        row("cook-reading", 0, start.plusMinutes(50), "77,5");
        type(browser.findElements(By.cssSelector("[data-row='cook-reading'] [data-name=held_seconds]")).get(0), "30");
        clock("out-of-oven", 0, start.plusMinutes(52));
        row("cooling-reading", 0, start.plusMinutes(130), "6,2");
        clock("put-away", 0, start.plusMinutes(135));
        picture("800-enter");
        key("Keep this sheet");
        until(() -> browser.getCurrentUrl().contains("/batches/"));
        String batch = browser.getCurrentUrl();
        String text = shown("main").getText();
        assertTrue(text.contains("sheet " + number) && text.contains("written later"), text);
        assertTrue(text.contains("Cooling: unjudged") && text.contains("on hold"), text);
        picture("800-sheet-batch");
        key("Accept them");
        until(() -> browser.findElements(By.cssSelector(".said")).stream().anyMatch(WebElement::isDisplayed) || browser.getCurrentUrl().equals(batch));
        browser.get(batch);
        assertTrue(shown("main").getText().contains("Cooling: unjudged"), "the writer accepts nothing");
        browser.findElements(By.cssSelector("button")).stream().filter(b -> b.getText().equals("Sign out")).findFirst().orElseThrow().click();
        until(() -> browser.getCurrentUrl().equals(service.address() + "/"));
        signIn("pat", "4444");
        browser.get(batch);
        key("Accept them");
        until(() -> browser.findElement(By.cssSelector("main")).getText().contains("Cooling: within"));
        String released = browser.findElement(By.cssSelector("main")).getText();
        assertFalse(browser.findElement(By.cssSelector("[data-follow]")).getText().contains("on hold"), released);
    }

    private static void clock(String kind, int index, ZonedDateTime at) {
        type(browser.findElements(By.cssSelector("[data-row='" + kind + "'] [data-clock]")).get(index), at.toLocalTime().withSecond(0).withNano(0).toString());
    }

    private static void row(String kind, int index, ZonedDateTime at, String value) {
        clock(kind, index, at);
        type(browser.findElements(By.cssSelector("[data-row='" + kind + "'] [data-name=temperature]")).get(index), value);
    }

    @Test
    @Order(4)
    void the_owner_sees_what_to_look_at_and_can_take_the_demo_away() throws Exception {
        browser.get(service.address() + "/session/owner");
        browser.findElement(By.name("password")).sendKeys("thornfold-demo");
        key("Sign in");
        shown("h1");
        for (String page : List.of("owner", "owner/review", "owner/week", "calculators", "probes", "units/fridge-2", "owner/rulebook?id=ireland", "owner/plans", "sheets", "batches/new")) {
            browser.get(service.address() + "/" + page);
            shown("h1");
            accessible(page);
            bigEnough(page);
            picture("800-" + page.replaceAll("\\W", "-"));
        }
        browser.get(service.address() + "/owner");
        browser.findElement(By.name("sure")).sendKeys("remove the demo");
        key("Remove it");
        assertTrue(shown("h1").getText().contains("being removed"));
        until(() -> !Files.exists(data.resolve("trivet.db")));
    }
}
