package trivet.calc.web;

import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import trivet.cooling.CookJudge;
import trivet.cooling.CookVerdict;
import trivet.cooling.CoolingJudge;
import trivet.cooling.CoolingReading;
import trivet.cooling.CoolingVerdict;
import trivet.cooling.Reason;
import trivet.cooling.StageVerdict;
import trivet.limit.AlternativesLimit;
import trivet.limit.Rulebook;
import trivet.limit.Rulebooks;
import trivet.limit.StagedCooling;
import trivet.measure.web.ProblemException;

/** Verdicts on given readings by a shipped rulebook, its suggestions included; pure, and no advice for one's own food. */
@Path("/api/calc")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
public class CalcApi {

    private static final String COOLING_EXAMPLE = "{\"rulebook\":\"us-food-code-2022\",\"out_of_oven_minute\":0,"
            + "\"readings\":[{\"minute\":0,\"celsius\":\"63.0\"},{\"minute\":110,\"celsius\":\"20.6\"},{\"minute\":350,\"celsius\":\"4.8\"}]}";
    private static final String COOK_EXAMPLE = "{\"rulebook\":\"england-wales-ni\",\"pieces\":[{\"celsius\":\"74.9\",\"held_seconds\":30}]}";

    @Inject
    Rulebooks rulebooks;

    @POST
    @Path("/cooling-verdict")
    @Operation(summary = "Judge one run of cooling", description = "Minutes are numbers, temperatures text or numbers.")
    @RequestBody(content = @Content(mediaType = MediaType.APPLICATION_JSON, schema = @Schema(type = org.eclipse.microprofile.openapi.annotations.enums.SchemaType.OBJECT, example = COOLING_EXAMPLE)))
    public Map<String, Object> cooling(byte[] bytes) {
        CalcBody body = new CalcBody(bytes, Set.of("rulebook", "out_of_oven_minute", "as_of_minute", "readings"));
        String rulebook = body.text("rulebook");
        Optional<BigDecimal> oven = body.optionalMinute("out_of_oven_minute");
        Optional<BigDecimal> asOf = body.optionalMinute("as_of_minute");
        List<CoolingReading> readings = body.readings();
        StagedCooling rule = rulebook(rulebook).cooling().orElseThrow(() -> noLimit("cooling"));
        BigDecimal last = readings.stream().map(CoolingReading::minute).max(BigDecimal::compareTo).orElseThrow();
        CoolingVerdict verdict = CoolingJudge.judge(rule, oven, readings, asOf.orElse(last));
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("verdict", verdict.whole().word());
        answer.put("stages", verdict.stages().stream().map(CalcApi::stage).toList());
        answer.put("caution", rulebook(rulebook).caution());
        return answer;
    }

    private static Map<String, Object> stage(StageVerdict verdict) {
        Map<String, Object> map = new LinkedHashMap<>();
        StagedCooling.Stage stage = verdict.stage();
        map.put("from_celsius", stage.from().map(from -> RulebookJson.celsius(from)).orElse(null));
        map.put("to_celsius", RulebookJson.celsius(stage.to()));
        map.put("limit_minutes", RulebookJson.plain(stage.minutes()));
        map.put("counted_from", stage.countedFrom().word());
        map.put("clock_minute", number(verdict.clock()));
        map.put("latest_clock_minute", number(verdict.latestClock()));
        map.put("deadline_minute", number(verdict.deadline()));
        map.put("reached_minute", number(verdict.reached()));
        map.put("verdict", verdict.verdict().word());
        map.put("reason", verdict.reason().map(Reason::word).orElse(null));
        map.put("minutes_left", number(verdict.minutesLeft()));
        map.put("late_by_minutes", number(verdict.lateBy()));
        map.put("standing", stage.basis().standing().word());
        map.put("words", verdict.words());
        return map;
    }

    private static BigDecimal number(Optional<BigDecimal> minutes) {
        return minutes.map(RulebookJson::plain).orElse(null);
    }

    @POST
    @Path("/cook-verdict")
    @Operation(summary = "Judge core temperatures", description = "A held_seconds of null is a hold that was not recorded.")
    @RequestBody(content = @Content(mediaType = MediaType.APPLICATION_JSON, schema = @Schema(type = org.eclipse.microprofile.openapi.annotations.enums.SchemaType.OBJECT, example = COOK_EXAMPLE)))
    public Map<String, Object> cook(byte[] bytes) {
        CalcBody body = new CalcBody(bytes, Set.of("rulebook", "limit", "food", "pieces"));
        String id = body.text("rulebook");
        String limitId = body.optionalText("limit").orElse("core-cook");
        Optional<String> food = body.optionalText("food");
        var pieces = body.pieces();
        Rulebook rulebook = rulebook(id);
        AlternativesLimit limit = rulebook.alternatives(limitId).orElseThrow(() -> noLimit(limitId));
        if (food.isPresent() && !rulebook.foods().isEmpty() && !rulebook.foods().contains(food.get())) {
            throw new ProblemException(422, "food", "The rulebook " + id + " tells these kinds of food apart: "
                    + String.join(", ", rulebook.foods()) + ".");
        }
        CookVerdict verdict = CookJudge.judge(limit, food, pieces);
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("verdict", verdict.verdict().word());
        answer.put("deciding_piece", verdict.decidingPiece());
        answer.put("row", verdict.row().map(CalcApi::row).orElse(null));
        answer.put("short_by_celsius", verdict.shortByCelsius().map(c -> RulebookJson.plain(c).toPlainString()).orElse(null));
        answer.put("short_by_seconds", number(verdict.shortBySeconds()));
        answer.put("words", verdict.words());
        answer.put("standing", limit.basis().standing().word());
        answer.put("caution", rulebook.caution());
        return answer;
    }

    private static Map<String, Object> row(AlternativesLimit.Row row) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("celsius", RulebookJson.celsius(row.least()));
        map.put("seconds", RulebookJson.plain(row.seconds()));
        return map;
    }

    private Rulebook rulebook(String id) {
        return rulebooks.find(id).map(Rulebook::withSuggestions).orElseThrow(() -> new ProblemException(422, "rulebook",
                "There is no rulebook called \"" + id + "\". GET /api/rulebooks lists them."));
    }

    private static ProblemException noLimit(String id) {
        return new ProblemException(422, "limit", "\"" + id + "\" cannot judge this. Use core-cook or reheat.");
    }
}
