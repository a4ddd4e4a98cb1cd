package trivet.calc.web;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import trivet.hazard.DecisionTree;
import trivet.hazard.Outcome;
import trivet.hazard.RiskMatrix;
import trivet.measure.web.ProblemException;
import trivet.measure.web.StrictJson;

/** The published trees and the matrix of hazard analysis; a tree is an aid, and a competent person decides. */
@Path("/api/calc")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
public class HazardApi {

    private static final String TREE_EXAMPLE = "{\"tree\":\"codex-2022\",\"answers\":{\"q1\":\"no\",\"q2\":\"yes\",\"q3\":\"no\",\"q4\":\"yes\"}}";
    private static final String MATRIX_EXAMPLE = "{\"matrix\":\"eu-notice-2022\",\"probability\":3,\"effect\":4}";

    @POST
    @Path("/control-point")
    @Operation(summary = "Is this step a critical control point for this hazard?", description = "Answers are yes or no; while some are missing, asks names the next question.")
    @RequestBody(content = @Content(mediaType = MediaType.APPLICATION_JSON, schema = @Schema(type = org.eclipse.microprofile.openapi.annotations.enums.SchemaType.OBJECT, example = TREE_EXAMPLE)))
    public Map<String, Object> controlPoint(byte[] bytes) {
        JsonNode body = StrictJson.object(bytes);
        StrictJson.only(body, "", Set.of("tree", "answers"));
        String id = new ScienceBody(bytes, "tree", "answers").text("tree", null, DecisionTree.ALL.stream().map(DecisionTree::id).toArray(String[]::new));
        DecisionTree tree = DecisionTree.find(id).orElseThrow();
        JsonNode answers = body.get("answers");
        if (answers == null || !answers.isObject()) {
            throw new ProblemException(400, "answers", "An object of answers is expected here, such as {\"q1\":\"no\"}; it may be empty.");
        }
        Map<String, String> given = new LinkedHashMap<>();
        answers.properties().forEach(entry -> {
            if (entry.getValue().isNull()) {
                return;
            }
            if (!entry.getValue().isTextual()) {
                throw new ProblemException(400, "answers." + entry.getKey(), "An answer is the text yes or no.");
            }
            given.put(entry.getKey(), entry.getValue().textValue());
        });
        try {
            DecisionTree.Result result = tree.decide(given);
            Map<String, Object> answer = new LinkedHashMap<>();
            answer.put("outcome", result.outcome().map(Outcome::word).orElse(null));
            answer.put("path", result.path());
            answer.put("asks", result.asks().orElse(null));
            answer.put("reason", result.reason());
            return answer;
        } catch (DecisionTree.Refused refused) {
            throw new ProblemException(422, "answers." + refused.question(), refused.getMessage());
        }
    }

    @POST
    @Path("/risk-level")
    @Operation(summary = "The risk level of a probability and an effect", description = "P + G − 1 of the Commission Notice 2022/C 355/01; both whole numbers from 1 to 4.")
    @RequestBody(content = @Content(mediaType = MediaType.APPLICATION_JSON, schema = @Schema(type = org.eclipse.microprofile.openapi.annotations.enums.SchemaType.OBJECT, example = MATRIX_EXAMPLE)))
    public Map<String, Object> riskLevel(byte[] bytes) {
        ScienceBody body = new ScienceBody(bytes, "matrix", "probability", "effect");
        body.text("matrix", null, "eu-notice-2022");
        int probability = whole(body, "probability");
        int effect = whole(body, "effect");
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("level", RiskMatrix.EU_NOTICE_2022.level(probability, effect));
        answer.put("route", RiskMatrix.EU_NOTICE_2022.route(probability, effect).word());
        return answer;
    }

    private static int whole(ScienceBody body, String field) {
        double number = body.number(field);
        if (number != Math.rint(number) || number < 1 || number > RiskMatrix.EU_NOTICE_2022.highest()) {
            throw new ProblemException(422, field, "A whole number from 1 to 4 is expected here.");
        }
        return (int) number;
    }
}
