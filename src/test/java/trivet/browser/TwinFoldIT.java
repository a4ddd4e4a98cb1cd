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
 * and checks with their due times, for each story of {@code src/test/js/fold.stories.json}.
 */
class TwinFoldIT extends InBrowser {

    private static final Path SCRIPTS = Path.of("src/test/js");

    @Test
    void the_tablet_and_the_service_tell_the_same_of_every_story() throws Exception {
        signIn("ana", "1111");
        until(() -> browser.getCurrentUrl().endsWith("/work"));
        browser.manage().timeouts().scriptTimeout(Duration.ofSeconds(60));
        List<?> stories = new ObjectMapper().readValue(SCRIPTS.resolve("fold.stories.json").toFile(), List.class);
        List<?> told = (List<?>) browser.executeAsyncScript(Files.readString(SCRIPTS.resolve("fold.twin.js")), stories);
        assertEquals(List.of(), told.subList(1, told.size()));
        assertEquals(stories.size(), Integer.parseInt(String.valueOf(told.get(0))));
        assertTrue(stories.size() >= 25);
    }
}
