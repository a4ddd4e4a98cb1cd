package trivet.words.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The files of the screens, as {@code tablet/files.txt} lists them: scripts, style sheet and icon, each by its path below the root. */
public final class ScreenFiles {

    private ScreenFiles() {
    }

    /** Their paths, in order. */
    public static List<String> list() {
        return read("/tablet/files.txt").lines().filter(line -> !line.isBlank() && !line.startsWith("#")).toList();
    }

    /** The text of one of them. */
    public static String text(String file) {
        return read("/META-INF/resources/" + file);
    }

    /** The text of a resource. */
    public static String read(String resource) {
        try (InputStream in = ScreenFiles.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("The file " + resource + " is not in this build.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
