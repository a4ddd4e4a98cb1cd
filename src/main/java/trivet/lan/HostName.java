package trivet.lan;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import trivet.words.Words;

/**
 * The name by which tablets reach the service. It is fixed: a browser keeps what waits under the name that it was saved under, so another name
 * leaves it behind. It lies in the data folder, where the start reads it.
 */
public final class HostName {

    private HostName() {
    }

    private static Path file(Path data) {
        return data.resolve("tls").resolve("host.txt");
    }

    /** The name that was fixed; empty before one was. */
    public static Optional<String> read(Path data) {
        try {
            return Files.exists(file(data)) ? Optional.of(Files.readString(file(data)).strip()) : Optional.empty();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Fixes a name, from the next start on; refuses with a sentence what is no host name. */
    public static String write(Path data, String name) {
        String host = checked(name);
        try {
            Files.createDirectories(file(data).getParent());
            Files.writeString(file(data), host);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        return host;
    }

    /** A name in lower case; refuses with a sentence what is no host name by RFC 1123, or is an address, which may change. */
    public static String checked(String name) {
        String host = name.strip().toLowerCase(Locale.ROOT);
        boolean labels = host.length() <= 253 && host.matches("[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?(\\.[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?)*");
        if (!labels || host.matches("[0-9.]+")) {
            throw new IllegalArgumentException(Words.say("j_no_host_name", name));
        }
        return host;
    }
}
