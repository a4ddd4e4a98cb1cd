package trivet.words.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import trivet.words.Words;

/** The sentences that the scripts of the screens say, as a module: <code>import { say } from "/words.js"</code>. */
@Path("/words.js")
public class WordsForScripts {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    @GET
    @Produces("text/javascript;charset=UTF-8")
    public String module() throws JsonProcessingException {
        return "const words = " + MAPPER.writeValueAsString(Words.family("js.")) + ";\n"
                + "export const say = (key, ...values) => (words[key] ?? key).replace(/\\{(\\d)\\}/g, (all, i) => values[i] ?? \"\");\n";
    }
}
