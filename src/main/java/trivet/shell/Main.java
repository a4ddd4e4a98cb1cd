package trivet.shell;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.annotations.QuarkusMain;
import java.nio.file.Path;
import java.util.Optional;

/** Starts the service, after looking whether it can: what stands in the way is said in one sentence, and nothing is changed. */
@QuarkusMain
public class Main {

    /** The setting's value from the command line, the environment, or the default. */
    private static String setting(String name, String environment, String otherwise) {
        return Optional.ofNullable(System.getProperty(name)).or(() -> Optional.ofNullable(System.getenv(environment))).orElse(otherwise);
    }

    /** Looks, and starts. */
    public static void main(String... arguments) {
        boolean demo = Boolean.parseBoolean(setting("trivet.demo", "TRIVET_DEMO", "false"));
        String data = setting("trivet.data", "TRIVET_DATA", demo ? "./data/demo" : "./data");
        System.setProperty("trivet.data", data);
        System.setProperty("trivet.demo", String.valueOf(demo));
        String port = setting("quarkus.http.port", "QUARKUS_HTTP_PORT", "8080");
        String host = setting("quarkus.http.host", "QUARKUS_HTTP_HOST", "127.0.0.1");
        Optional<String> obstacle = StartCheck.obstacle(Path.of(data), host, Integer.parseInt(port), demo);
        if (obstacle.isPresent()) {
            System.err.println(obstacle.get());
            System.exit(1);
        }
        Quarkus.run(null, (exitCode, failure) -> {
            if (demo) {
                RemoveDemo.deleteMarked(Path.of(data));
            }
            System.exit(exitCode);
        }, arguments);
    }
}
