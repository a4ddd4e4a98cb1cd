package trivet;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** Starts the service of a test on the demo bakery in a folder of its own. */
public class FreshDemo implements QuarkusTestResourceLifecycleManager {

    private static Path folder;

    /** The database of the running test. */
    public static Path database() {
        return folder.resolve("trivet.db");
    }

    /** The credential of the first tablet. */
    public static String tablet() {
        try {
            return Files.readString(folder.resolve("first-tablet.token")).strip();
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }

    @Override
    public Map<String, String> start() {
        try {
            folder = Files.createTempDirectory("trivet-test");
            return Map.of("trivet.data", folder.toString(), "trivet.demo", "true");
        } catch (IOException refused) {
            throw new UncheckedIOException(refused);
        }
    }

    @Override
    public void stop() {
        // The folder lies among the temporary files and is small.
    }
}
