package trivet.tablet.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import trivet.measure.Digest;
import trivet.words.Words;
import trivet.words.web.ScreenFiles;
import trivet.words.web.WordsForScripts;

/**
 * What makes a tablet able to open without a network: the service worker at the root, the manifest, and the page that it shows then. The build is
 * the hash of everything that a tablet keeps, so that it changes exactly when one of these files does.
 */
@Path("/")
@Singleton
public class ShellFiles {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final String SHELL = "/tablet/shell";

    @Inject
    @Location("tablet/shell.html")
    Template shell;
    @Inject
    WordsForScripts words;

    private volatile String build;

    /** The build of the screens. */
    public String build() {
        if (build == null) {
            try {
                StringBuilder all = new StringBuilder(ScreenFiles.read("/tablet/sw.js")).append(words.module()).append(page(""));
                for (String tag : Words.languages().keySet()) {
                    all.append(words.of(tag));
                }
                ScreenFiles.list().forEach(file -> all.append(ScreenFiles.text(file)));
                build = Digest.sha256(all.toString()).substring(0, 16);
            } catch (JsonProcessingException impossible) {
                throw new IllegalStateException(impossible);
            }
        }
        return build;
    }

    @GET
    @Path("sw.js")
    @Produces("text/javascript;charset=UTF-8")
    public String worker() throws JsonProcessingException {
        List<String> files = new ArrayList<>(List.of(SHELL, "/words.js", "/manifest.webmanifest"));
        Words.languages().keySet().stream().filter(tag -> !tag.equals(Words.FIRST)).forEach(tag -> files.add("/words/" + tag + ".js"));
        ScreenFiles.list().forEach(file -> files.add("/" + file));
        return "const BUILD = " + MAPPER.writeValueAsString(build()) + ";\nconst FILES = " + MAPPER.writeValueAsString(files) + ";\n" + ScreenFiles.read("/tablet/sw.js");
    }

    @GET
    @Path("tablet/shell")
    @Produces("text/html;charset=UTF-8")
    public String shell() {
        return page(build());
    }

    /** The tablet's own page, the same for everybody: its scripts put the words of whoever stands there in. */
    private String page(String of) {
        return Words.in(Words.FIRST, () -> shell.data("build", of).render());
    }

    /** What waits on a tablet is known to the tablet alone, so that its own page shows it. */
    @GET
    @Path("waiting")
    @Produces("text/html;charset=UTF-8")
    public String waiting() {
        return shell();
    }

    @GET
    @Path("manifest.webmanifest")
    @Produces("application/manifest+json;charset=UTF-8")
    public Map<String, Object> manifest() {
        return Map.of("name", Words.say("s_trivet"), "short_name", Words.say("s_trivet"), "id", "/", "start_url", "/", "scope", "/", "display", "standalone", "background_color", "#faf5ec", "theme_color", "#1b232c",
                "icons", List.of(Map.of("src", "/icon.svg", "sizes", "any", "type", "image/svg+xml", "purpose", "any")));
    }
}
