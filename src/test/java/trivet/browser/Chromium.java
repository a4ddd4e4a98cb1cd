package trivet.browser;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/** Debian's Chromium without a window. */
public final class Chromium {

    private Chromium() {
    }

    /** Skips aloud where there is no Chromium; fails where the suite must have one. */
    public static void needed() {
        boolean there = Files.isExecutable(Path.of("/usr/bin/chromium")) && Files.isExecutable(Path.of("/usr/bin/chromedriver"));
        if (!there && "true".equals(System.getenv("CI"))) {
            throw new IllegalStateException("The browser tests need chromium and chromium-driver.");
        }
        if (!there) {
            System.out.println("SKIPPED: the browser tests need Debian's chromium and chromium-driver.");
        }
        assumeTrue(there, "the browser tests need chromium and chromium-driver");
    }

    /** A browser with a profile of its own. */
    public static ChromeDriver open(String... more) {
        ChromeOptions options = new ChromeOptions();
        options.setBinary("/usr/bin/chromium");
        options.addArguments("--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--disable-quic", "--no-first-run",
                "--disable-background-networking", "--disable-component-update", "--disable-sync");
        options.addArguments(more);
        ChromeDriverService driver = new ChromeDriverService.Builder().usingDriverExecutable(new File("/usr/bin/chromedriver")).usingAnyFreePort().build();
        return new ChromeDriver(driver, options);
    }
}
