package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The main path on a tablet, from signing in to the month's PDF, in a real browser. */
class MainPathBrowserIT extends InBrowser {

    @ParameterizedTest
    @CsvSource({"1280,800", "800,1280"})
    void a_quiche_from_the_oven_to_the_report(int width, int height) throws Exception {
        browser.manage().window().setSize(new Dimension(width, height));
        browser.get(service.address() + "/");
        picture(width + "-tiles");
        shown("a[href='/session/pin/ana']").click();
        find(".pad button");
        WebElement digit = browser.findElements(By.cssSelector(".pad button")).get(0);
        assertTrue(digit.getSize().width >= 126 && digit.getSize().height >= 126, "a key of the pad is at least 20 mm: " + digit.getSize());
        press("111");
        picture(width + "-pin");
        press("1");
        shown("h1");
        picture(width + "-work");
        key("Start a batch");
        new Select(find("select[name=product]")).selectByValue("deep-quiche");
        picture(width + "-new");
        key("Begin this batch");
        new WebDriverWait(browser, Duration.ofSeconds(15)).ignoring(org.openqa.selenium.StaleElementReferenceException.class).until(b -> b.getCurrentUrl().matches(".*/batches/[0-9a-f-]{36}"));
        String batch = browser.getCurrentUrl();
        String code = find("h1").getText().split(" ")[0];
        key("Probe the core");
        String failed = probe("74,9", true);
        assertEquals("74.9 °C. 0.1 °C short of 75 °C for 30 s. Back in the oven, then probe again.", failed);
        assertTrue(find(".now").getText().contains("Back in the oven"));
        browser.findElement(By.cssSelector("button.primary")).click();
        new WebDriverWait(browser, Duration.ofSeconds(15)).ignoring(org.openqa.selenium.StaleElementReferenceException.class).until(b -> !b.findElements(By.xpath("//td[text()='back in the oven']")).isEmpty());
        browser.get(batch + "/core");
        assertEquals("76.1 °C. Meets 75 °C for 30 s.", probe("76,1", true));
        key("Out of the oven now");
        new WebDriverWait(browser, Duration.ofSeconds(15)).ignoring(org.openqa.selenium.StaleElementReferenceException.class).until(b -> !b.findElements(By.xpath("//td[text()='out of the oven']")).isEmpty());
        browser.get(batch + "/cooling");
        assertTrue(probe("63,0", false).contains("min left"));
        browser.get(batch + "/cooling");
        assertTrue(probe("7,4", false).contains("Cooled in time"));
        picture(width + "-batch");
        browser.findElement(By.cssSelector("form[data-record='put-away'] button")).click();
        new WebDriverWait(browser, Duration.ofSeconds(15)).ignoring(org.openqa.selenium.StaleElementReferenceException.class).until(b -> b.findElement(By.cssSelector("main")).getText().contains("use by"));
        assertTrue(browser.findElement(By.cssSelector("main")).getText().contains("corrected at the step"));
        for (String page : List.of("cooling", "units", "units/fridge-1", "deviations", "month", "days/2026-10-09", "probes", "probes/P1", "reports/range?from=2026-10-09&to=2026-10-10")) {
            browser.get(service.address() + "/" + page);
            shown("h1");
            accessible(page);
            bigEnough(page);
            picture(width + "-" + page.replaceAll("\\W", "-"));
        }
        browser.get(service.address() + "/reports/month/2026-10");
        shown("h1");
        picture(width + "-reports-month-2026-10");
        reported(code);
        browser.get(service.address() + "/work");
        browser.findElements(By.cssSelector("button")).stream().filter(b -> b.getText().equals("Sign out")).findFirst().orElseThrow().click();
    }

    private static void reported(String code) throws Exception {
        String basic = "Basic " + Base64.getEncoder().encodeToString("olive:thornfold-demo".getBytes());
        String month = java.time.YearMonth.now(java.time.ZoneId.of("Europe/London")).toString();
        HttpResponse<byte[]> answer = HttpClient.newHttpClient().send(HttpRequest.newBuilder(URI.create(service.address() + "/reports/month/" + month + ".pdf"))
                .header("Authorization", basic).build(), HttpResponse.BodyHandlers.ofByteArray());
        assertEquals(200, answer.statusCode());
        try (PDDocument document = Loader.loadPDF(answer.body())) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            assertTrue(text.contains(code) && text.contains("76.1 °C") && text.contains("74.9 °C"), text);
            assertTrue(text.contains("Page 1 of " + document.getNumberOfPages()));
            assertTrue(document.getDocumentCatalog().getMarkInfo().isMarked());
            assertEquals("en", document.getDocumentCatalog().getLanguage());
        }
    }

    @Test
    void the_pages_of_a_stranger_lead_to_the_tiles() {
        browser.manage().deleteAllCookies();
        browser.get(service.address() + "/month");
        assertEquals(service.address() + "/", browser.getCurrentUrl());
    }
}
