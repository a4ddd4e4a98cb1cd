package trivet.bench;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.openqa.selenium.Cookie;
import org.openqa.selenium.chrome.ChromeDriver;
import trivet.browser.Chromium;
import trivet.browser.Wire;
import trivet.start.Service;

/**
 * A tablet's first page over a slow wire, from the tap to the verdict without a network, and a thousand records that wait, in Chromium; and sixteen
 * tablets that send at once. See src/doc/measurements.md.
 */
public final class TabletBench {

    private static final int SLOW_WIRE_MS = 300;
    private static final int SLOWER = 6;
    private static final int TABLETS = 16;
    private static final int LISTS = 40;
    private static final int EACH = 10;

    private TabletBench() {
    }

    /** Prints what was measured. */
    public static void main(String[] args) throws Exception {
        Path data = Files.createTempDirectory("tablet-bench");
        int secure = Service.freePort();
        try (Service service = Service.start(data, "-Dtrivet.demo=true", "-Dtrivet.lan=true", "-Dtrivet.host=ovens.localhost", "-Dquarkus.http.ssl-port=" + secure, "-Dquarkus.http.host=127.0.0.1");
                Wire wire = new Wire(service.port); Wire tls = new Wire(secure)) {
            String token = Files.readString(data.resolve("first-tablet.token")).strip();
            ChromeDriver browser = Chromium.open("--ignore-certificate-errors");
            try {
                browser.manage().timeouts().scriptTimeout(Duration.ofSeconds(120));
                String home = tls.address().replace("http://localhost", "https://ovens.localhost");
                join(browser, home, token);
                firstPage(browser, tls, home);
                join(browser, wire.address(), token);
                browser.get(wire.address() + "/work");
                Thread.sleep(8000);
                toVerdict(browser, wire);
                thousand(browser, wire);
            } finally {
                browser.quit();
            }
            sixteen(service, token);
        }
    }

    private static void join(ChromeDriver browser, String home, String token) {
        browser.get(home + "/icon.svg");
        browser.manage().addCookie(new Cookie.Builder("trivet-tablet", token).path("/").isHttpOnly(true).build());
        browser.executeAsyncScript("const done = arguments[0]; fetch('/session/pin/ana', { method: 'POST', body: new URLSearchParams({ pin: '1111' }) }).then(() => { sessionStorage.setItem('trivet.person', JSON.stringify({ id: 'ana', offline: false })); done(); });");
    }

    private static void firstPage(ChromeDriver browser, Wire wire, String home) throws InterruptedException {
        browser.executeCdpCommand("Network.enable", Map.of());
        browser.executeCdpCommand("Network.clearBrowserCache", Map.of());
        browser.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source",
                "new MutationObserver((_, o) => { if (document.querySelector('.pad button')) { o.disconnect(); window.usable = performance.now(); } }).observe(document, { childList: true, subtree: true });"));
        browser.executeCdpCommand("Emulation.setCPUThrottlingRate", Map.of("rate", SLOWER));
        browser.executeCdpCommand("Network.emulateNetworkConditions", Map.of("offline", false, "latency", SLOW_WIRE_MS, "downloadThroughput", -1, "uploadThroughput", -1));
        long before = wire.carried();
        browser.get(home + "/units/fridge-1");
        Object usable = null;
        for (int i = 0; i < 200 && usable == null; i++) {
            Thread.sleep(50);
            usable = browser.executeScript("return window.usable ?? null");
        }
        long page = wire.carried() - before;
        Thread.sleep(8000);
        System.out.printf("first page at %d × slower and %d ms: usable after %.0f ms (goal 2000), %d kB up to there (goal 150), %d kB with all that it takes along for work without a network%n", SLOWER, SLOW_WIRE_MS,
                ((Number) usable).doubleValue(), page / 1000, (wire.carried() - before) / 1000);
        browser.executeCdpCommand("Emulation.setCPUThrottlingRate", Map.of("rate", 1));
        browser.executeCdpCommand("Network.emulateNetworkConditions", Map.of("offline", false, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
    }

    private static void toVerdict(ChromeDriver browser, Wire wire) throws InterruptedException {
        wire.cut(true);
        List<Double> times = new ArrayList<>();
        for (int i = 0; i < 15; i++) {
            browser.get(wire.address() + "/units/fridge-1");
            for (int j = 0; j < 100 && Boolean.FALSE.equals(browser.executeScript("return document.querySelector('.pad button') !== null")); j++) {
                Thread.sleep(50);
            }
            times.add(((Number) browser.executeAsyncScript("const done = arguments[0], form = document.querySelector('form[data-reading]'), said = form.querySelector('[data-said]'); form.querySelector('[data-value]').value = '4';"
                    + "const start = performance.now(); new MutationObserver((_, o) => { if (!said.hidden) { o.disconnect(); requestAnimationFrame(() => setTimeout(() => done(performance.now() - start))); } }).observe(form, { subtree: true, attributes: true, childList: true, characterData: true });"
                    + "form.querySelector('button.primary').click();")).doubleValue());
        }
        Collections.sort(times);
        System.out.printf("tap to verdict without a network: median %.0f ms, slowest of %d %.0f ms (goal 100)%n", times.get(times.size() / 2), times.size(), times.get(times.size() - 1));
    }

    private static void thousand(ChromeDriver browser, Wire wire) {
        browser.executeAsyncScript("const done = arguments[0]; (async () => { const { save } = await import('/js/records.js'); for (let i = 0; i < 1000; i++) { await save('note', { text: 'waits ' + i }, { person: 'ana' }); dispatchEvent(new Event('pointerdown')); } })().then(done, wrong => done(String(wrong)));");
        browser.get(wire.address() + "/units/fridge-1");
        Object opened = browser.executeAsyncScript("const done = arguments[0]; (function look() { if (document.querySelector('.pad button')) done(performance.now()); else setTimeout(look, 5); })();");
        wire.cut(false);
        Object sent = browser.executeAsyncScript("const done = arguments[0]; (async () => { const { flush } = await import('/js/tablet/sender.js'), { store } = await import('/js/tablet/store.js'), start = performance.now();"
                + "for (let i = 0; i < 20 && (await store.inState('waiting')).length; i++) await flush(true); return [performance.now() - start, (await store.inState('waiting')).length]; })().then(done);");
        System.out.printf("1,000 waiting records: the page opens in %.0f ms (goal 1000); [ms, left] to send them %s (goal 20000)%n", ((Number) opened).doubleValue(), sent);
    }

    private static void sixteen(Service service, String token) throws Exception {
        List<Double> times = Collections.synchronizedList(new ArrayList<>());
        for (int round = 0; round < 2; round++) {
            times.clear();
            List<Thread> tablets = new ArrayList<>();
            for (int tablet = 0; tablet < TABLETS; tablet++) {
                Random random = new Random(100L * round + tablet);
                tablets.add(new Thread(() -> send(service, token, random, times)));
            }
            tablets.forEach(Thread::start);
            for (Thread tablet : tablets) {
                tablet.join();
            }
        }
        Collections.sort(times);
        System.out.printf("%d tablets, each %d lists of %d records, after one round to warm up: median %.0f ms, p99 %.0f ms (goal 200), slowest %.0f ms%n", TABLETS, LISTS, EACH, times.get(times.size() / 2), times.get(times.size() * 99 / 100), times.get(times.size() - 1));
    }

    private static void send(Service service, String token, Random random, List<Double> times) {
        HttpClient client = HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
        for (int list = 0; list < LISTS; list++) {
            StringBuilder body = new StringBuilder("[");
            for (int i = 0; i < EACH; i++) {
                body.append(i == 0 ? "" : ",").append(new String(BenchRecords.reading(BenchRecords.id(random), Instant.now()), StandardCharsets.UTF_8));
            }
            HttpRequest request = HttpRequest.newBuilder(URI.create(service.address() + "/api/records")).header("Content-Type", "application/json").header("Authorization", "Bearer " + token)
                    .POST(HttpRequest.BodyPublishers.ofString(body.append("]").toString())).build();
            long start = System.nanoTime();
            try {
                HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
                if (answer.statusCode() != 200) {
                    throw new IllegalStateException(answer.statusCode() + " " + answer.body());
                }
            } catch (IOException | InterruptedException failed) {
                throw new IllegalStateException(failed);
            }
            times.add((System.nanoTime() - start) / 1e6);
        }
    }
}
