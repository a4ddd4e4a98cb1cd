package trivet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What a tablet makes of its own records without a network is what the service makes of them afterwards: life, verdicts, next step, open deviations, holds
 * and checks with their due times, for each story of {@code src/test/js/fold.stories.json}, whether all of it or only its
 * end happened without a network.
 */
class TwinFoldIT extends InBrowser {

    private static final Path SCRIPTS = Path.of("src/test/js");

    @Test
    void the_tablet_and_the_service_tell_the_same_of_every_story() throws Exception {
        signIn("ana", "1111");
        until(() -> browser.getCurrentUrl().endsWith("/work"));
        browser.manage().timeouts().scriptTimeout(Duration.ofSeconds(60));
        List<?> stories = new ObjectMapper().readValue(SCRIPTS.resolve("fold.stories.json").toFile(), List.class);
        for (double share : new double[] {0, 0.3, 0.6, 0.8}) {
            List<?> told = (List<?>) browser.executeAsyncScript(Files.readString(SCRIPTS.resolve("fold.twin.js")), stories, share);
            assertEquals(List.of(), told.subList(1, told.size()), "with a share of " + share + " in the kit");
            assertEquals(stories.size(), Integer.parseInt(String.valueOf(told.get(0))));
        }
        assertTrue(stories.size() >= 50);
    }
}
