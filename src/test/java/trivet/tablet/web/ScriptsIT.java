package trivet.tablet.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.chrome.ChromeDriver;
import trivet.browser.Chromium;
import trivet.words.web.WordsForScripts;

/** The scripts of the screens by themselves, in the browser that they are for: the modules of src/test/js, each function a test. */
class ScriptsIT {

    private static final Path RESOURCES = Path.of("src/main/resources/META-INF/resources");
    private static final Path TESTS = Path.of("src/test/js");
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static HttpServer server;
    private static ChromeDriver browser;

    @BeforeAll
    static void open() throws IOException {
        Chromium.needed();
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", ScriptsIT::answer);
        server.start();
        browser = Chromium.open();
        browser.manage().timeouts().scriptTimeout(Duration.ofSeconds(120));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.quit();
        }
        if (server != null) {
            server.stop(0);
        }
    }

    private static void answer(HttpExchange exchange) throws IOException {
        String path = exchange.getRequestURI().getPath();
        byte[] body;
        String type = path.endsWith(".js") ? "text/javascript;charset=UTF-8" : path.startsWith("/cases/") ? "application/json" : "text/html;charset=UTF-8";
        if (path.equals("/words.js")) {
            body = new WordsForScripts().module().getBytes(StandardCharsets.UTF_8);
        } else if (path.startsWith("/test/")) {
            body = Files.readAllBytes(TESTS.resolve(path.substring(6)));
        } else if (path.startsWith("/js/")) {
            body = Files.readAllBytes(RESOURCES.resolve(path.substring(1)));
        } else if (path.startsWith("/cases/")) {
            body = MAPPER.writeValueAsBytes(TwinCases.of(path.substring(7)));
        } else {
            body = "<!doctype html><title>tests</title><body></body>".getBytes(StandardCharsets.UTF_8);
        }
        exchange.getResponseHeaders().set("Content-Type", type);
        exchange.sendResponseHeaders(200, body.length);
        try (var out = exchange.getResponseBody()) {
            out.write(body);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"outbox", "judges", "clock", "days", "thermometers"})
    void every_function_of_a_module_of_tests_passes(String module) {
        browser.get("http://localhost:" + server.getAddress().getPort() + "/page.html");
        Object told = browser.executeAsyncScript("const done = arguments[1]; import('/test/' + arguments[0] + '.test.js').then(async tests => { const failed = [], names = Object.keys(tests); "
                + "for (const name of names) await Promise.resolve().then(tests[name]).catch(wrong => failed.push(name + ': ' + (wrong.stack ?? wrong))); done([String(names.length), ...failed]); }, wrong => done(['0', String(wrong.stack ?? wrong)]));", module);
        List<?> lines = (List<?>) told;
        assertEquals(List.of(), lines.subList(1, lines.size()));
        assertTrue(Integer.parseInt(String.valueOf(lines.get(0))) > 0, "the module has tests");
    }

    @org.junit.jupiter.api.Test
    void every_module_of_tests_is_run() throws Exception {
        try (Stream<Path> files = Files.list(TESTS)) {
            assertEquals(List.of("clock", "days", "judges", "outbox", "thermometers"), files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(".test.js")).map(name -> name.replace(".test.js", "")).sorted().toList());
        }
    }
}
