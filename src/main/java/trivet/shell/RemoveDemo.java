package trivet.shell;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import trivet.site.DemoRemoval;

/** Removes the demo: a mark is left in its folder, the service stops, and the folder with the mark is deleted. */
@ApplicationScoped
class RemoveDemo implements DemoRemoval {

    private static final String MARK = "remove-this-demo";
    private static final long SECONDS_TO_ANSWER = 1;

    @ConfigProperty(name = "trivet.data")
    String data;

    void start(@Observes StartupEvent event) {
        // Keeps the bean, which is looked up by its interface only.
    }

    @Override
    public void request() {
        try {
            Files.writeString(Path.of(data, MARK), "");
        } catch (IOException refused) {
            throw new UncheckedIOException(refused);
        }
        CompletableFuture.delayedExecutor(SECONDS_TO_ANSWER, TimeUnit.SECONDS).execute(Quarkus::asyncExit);
    }

    /** Deletes a folder that was marked; says what it did. */
    static void deleteMarked(Path folder) {
        if (!Files.exists(folder.resolve(MARK))) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            List<Path> deepestFirst = files.sorted(Comparator.reverseOrder()).toList();
            for (Path file : deepestFirst) {
                Files.delete(file);
            }
            System.out.println("The demo is removed. Start Trivet without it for your own bakery.");
        } catch (IOException refused) {
            System.err.println("The folder " + folder.toAbsolutePath().normalize() + " could not be removed whole. Delete it by hand.");
        }
    }
}
