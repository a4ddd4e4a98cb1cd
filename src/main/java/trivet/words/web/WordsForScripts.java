package trivet.words.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import trivet.words.Words;

/**
 * The sentences that the scripts of the screens say, and no others, as a module: <code>import { say, named } from "/words.js"</code>. Which they
 * are is read from the scripts themselves.
 */
@Path("/")
@ApplicationScoped
public class WordsForScripts {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final Pattern SAID = Pattern.compile("(?:(?:say|words)\\(\"|\"(?=[sj]_))([a-z0-9_]+)\"");
    private static final Pattern NAMED = Pattern.compile("named\\(\"([a-z]+)\"");

    private final Map<String, Map<String, String>> all = new TreeMap<>();

    /** Reads the scripts. */
    public WordsForScripts() {
        Words.languages().keySet().forEach(tag -> all.put(tag, Words.in(tag, WordsForScripts::read)));
    }

    private static Map<String, String> read() {
        Map<String, String> words = new TreeMap<>();
        for (String file : ScreenFiles.list()) {
            if (file.endsWith(".js")) {
                String script = ScreenFiles.text(file);
                SAID.matcher(script).results().map(found -> found.group(1)).forEach(key -> words.put(key, Words.form(key.matches("[sj]_.*") ? key : "js." + key)));
                for (Matcher family = NAMED.matcher(script); family.find();) {
                    String name = family.group(1) + ".";
                    Words.family(name).forEach((end, form) -> words.put(name + end, form));
                }
            }
        }
        return words;
    }

    /** The module, with the sentences in English; those of another language are fetched when somebody speaks it. */
    @GET
    @Path("words.js")
    @Produces("text/javascript;charset=UTF-8")
    public String module() throws JsonProcessingException {
        return "const words = " + MAPPER.writeValueAsString(all.get(Words.FIRST)) + ";\n"
                + ScreenFiles.read("/tablet/words.js");
    }

    /** The sentences of another language. */
    @GET
    @Path("words/{tag}.js")
    @Produces("text/javascript;charset=UTF-8")
    public String of(@PathParam("tag") String tag) throws JsonProcessingException {
        if (!all.containsKey(tag)) {
            throw new NotFoundException();
        }
        return "export default " + MAPPER.writeValueAsString(all.get(tag)) + ";\n";
    }
}
