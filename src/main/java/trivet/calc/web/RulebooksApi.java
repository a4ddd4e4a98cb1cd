package trivet.calc.web;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import trivet.limit.Rulebook;
import trivet.limit.Rulebooks;
import trivet.measure.web.ProblemException;

/** The shipped rulebooks, each number with its source and standing. */
@Path("/api/rulebooks")
@Produces(MediaType.APPLICATION_JSON)
public class RulebooksApi {

    @Inject
    Rulebooks rulebooks;

    @GET
    public List<Map<String, Object>> list() {
        return rulebooks.list().stream().map(RulebooksApi::head).toList();
    }

    @GET
    @Path("/{id}")
    public Map<String, Object> one(@PathParam("id") String id) {
        Rulebook rulebook = rulebooks.find(id).orElseThrow(() -> new ProblemException(404, "id",
                "There is no rulebook called \"" + id + "\"."));
        Map<String, Object> map = head(rulebook);
        map.put("caution", rulebook.caution());
        map.put("foods", rulebook.foods());
        map.put("limits", RulebookJson.limits(rulebook.limits()));
        return map;
    }

    private static Map<String, Object> head(Rulebook rulebook) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("id", rulebook.id());
        map.put("title", rulebook.title());
        map.put("version", rulebook.version());
        map.put("jurisdiction", rulebook.jurisdiction());
        map.put("sha256", rulebook.sha256());
        return map;
    }
}
