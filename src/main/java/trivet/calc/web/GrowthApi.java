package trivet.calc.web;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import trivet.calc.web.ScienceBody.Points;
import trivet.growth.Growth;
import trivet.growth.GrowthModel;
import trivet.growth.ShelfLife;
import trivet.measure.web.ProblemException;

/** Growth and shelf life: how much a bug would have grown if it was there. */
@Path("/api/calc")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
public class GrowthApi {

    @GET
    @Path("/growth/models")
    @Consumes(MediaType.WILDCARD)
    @Operation(summary = "The growth models that are offered")
    public List<Map<String, Object>> models() {
        return GrowthModel.ALL.stream().map(model -> {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("id", model.id());
            one.put("organism", model.organism());
            one.put("matrix", model.matrix());
            one.put("range_celsius", List.of(model.lowestMeasured(), model.highestMeasured()));
            one.put("lag", !Double.isNaN(model.lag()));
            one.put("needs", model.needs().stream().sorted().toList());
            one.put("source", model.source());
            return one;
        }).toList();
    }

    private static GrowthModel.Conditions conditions(ScienceBody body, GrowthModel model) {
        for (String need : model.needs()) {
            if (Double.isNaN(body.number(need, Double.NaN))) {
                throw new ProblemException(422, need, "The model " + model.id() + " needs this.");
            }
        }
        return new GrowthModel.Conditions(body.number("ph", Double.NaN), body.number("water_activity", Double.NaN), body.number("salt_percent", Double.NaN));
    }

    private static void notAbove25(GrowthModel model, String field, double... celsius) {
        if (model.id().equals("l-monocytogenes-rte")) {
            for (double t : celsius) {
                if (t > model.highestMeasured()) {
                    throw new ProblemException(422, field, "This model has no upper end and is not used above 25 °C.");
                }
            }
        }
    }

    @POST
    @Path("/growth")
    @Operation(summary = "How much a bug would have grown over a temperature curve, if it was there")
    public Map<String, Object> growth(byte[] bytes) {
        ScienceBody body = new ScienceBody(bytes, "model", "start_log", "max_log", "lag", "ph", "water_activity", "salt_percent", "knots");
        GrowthModel model = Science.refusing("model", () -> GrowthModel.of(body.text("model", null)));
        double start = body.number("start_log", 0);
        double max = body.number("max_log", model.maxLog());
        if (max <= start) {
            throw new ProblemException(422, "max_log", "The highest count lies above the start.");
        }
        boolean lag = body.flag("lag", true);
        Points knots = body.points("knots", "hour", 2);
        notAbove25(model, "knots", knots.celsius());
        GrowthModel.Conditions conditions = conditions(body, model);
        Growth growth = Science.refusing(model.needs().contains("salt_percent") ? "salt_percent" : "ph", () -> new Growth(model, conditions, lag));
        double[] integrals = growth.integrals(knots.times(), knots.celsius());
        List<Map<String, Object>> at = new ArrayList<>();
        for (int i = 0; i < integrals.length; i++) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("hour", knots.times()[i]);
            one.put("log", growth.log(integrals[i], start, max));
            at.add(one);
        }
        double last = integrals[integrals.length - 1];
        double end = growth.log(last, start, max);
        Science.finite("knots", last, end);
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("growth_log", end - start);
        map.put("final_log", end);
        map.put("integral", last);
        map.put("at", at);
        map.put("spread_log", model.spreadLog());
        return Science.answer(map, model.source() + "; Baranyi and Roberts (1994), closed form", "growth", growth.leavesRange(knots.celsius()) ? "outside" : null);
    }

    @POST
    @Path("/shelf-life")
    @Operation(summary = "Days until so much growth at one temperature")
    public Map<String, Object> shelfLife(byte[] bytes) {
        ScienceBody body = new ScienceBody(bytes, "model", "celsius", "ph", "water_activity", "salt_percent", "growth_logs");
        GrowthModel model = Science.refusing("model", () -> GrowthModel.of(body.text("model", "l-monocytogenes-rte")));
        double celsius = body.temperature("celsius");
        notAbove25(model, "celsius", celsius);
        GrowthModel.Conditions conditions = conditions(body, model);
        double[] logs = body.numbers("growth_logs", 1);
        for (int i = 0; i < logs.length; i++) {
            Science.positive("growth_logs[" + i + "]", logs[i]);
        }
        Growth growth = Science.refusing("ph", () -> new Growth(model, conditions, false));
        double rate = growth.rate(celsius);
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("rate_per_hour", rate);
        List<Double> days = new ArrayList<>();
        for (double log : logs) {
            days.add(Science.plain(ShelfLife.days(rate, log)));
        }
        map.put("days", days);
        return Science.answer(map, model.source(), "shelf", rate == 0 ? "outside" : null);
    }
}
