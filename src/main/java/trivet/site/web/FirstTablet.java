package trivet.site.web;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import trivet.device.Devices;

/**
 * The tablet that this machine itself is: enrolled at the first start. Its token lies in the data folder, readable by the
 * service's own user alone, so that a browser on this machine can be given it as a cookie.
 */
@ApplicationScoped
public class FirstTablet {

    @Inject
    Devices devices;
    @ConfigProperty(name = "trivet.data")
    String data;

    private Path file() {
        return Path.of(data, "first-tablet.token");
    }

    void start(@Observes @Priority(100) StartupEvent event) {
        if (devices.tablets().isEmpty()) {
            write(devices.enrol("This machine", "first start"));
        }
    }

    private void write(String token) {
        try {
            Files.deleteIfExists(file());
            if (file().getFileSystem().supportedFileAttributeViews().contains("posix")) {
                Files.createFile(file(), PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
            }
            Files.writeString(file(), token);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** The token, unless the file was taken away. */
    public Optional<String> token() {
        try {
            return Files.exists(file()) ? Optional.of(Files.readString(file()).strip()) : Optional.empty();
        } catch (IOException unreadable) {
            return Optional.empty();
        }
    }
}
