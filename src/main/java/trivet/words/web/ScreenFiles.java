package trivet.words.web;

import io.quarkus.qute.TemplateGlobal;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** The files of the screens, as {@code tablet/files.txt} lists them: scripts, style sheet and icon, each by its path below the root. */
public final class ScreenFiles {

    private static final String SPOKEN = "/words.js";
    private static final Pattern IMPORT = Pattern.compile("(?m)^import (?:[^\"']*from )?\"([^\"]+)\";");

    private ScreenFiles() {
    }

    /** Their paths, in order. */
    public static List<String> list() {
        return read("/tablet/files.txt").lines().filter(line -> !line.isBlank() && !line.startsWith("#")).toList();
    }

    /** A script and all that it imports at once, nearest first, by their addresses: a browser that is told of them in the page asks for all together. */
    public static List<String> modules(String script) {
        Set<String> found = new LinkedHashSet<>();
        Deque<String> open = new ArrayDeque<>(List.of(script));
        while (!open.isEmpty()) {
            String address = open.removeFirst();
            if (found.add(address) && !address.equals(SPOKEN)) {
                IMPORT.matcher(text(address.substring(1))).results().map(one -> URI.create(address).resolve(one.group(1)).toString()).forEach(open::addLast);
            }
        }
        return List.copyOf(found);
    }

    /** Makes the scripts of every page known in every template. */
    @TemplateGlobal
    static class Scripts {

        private static final List<String> ALL = ScreenFiles.modules("/js/trivet.js");

        /** The addresses of the scripts that every page needs. */
        static List<String> scripts() {
            return ALL;
        }
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
