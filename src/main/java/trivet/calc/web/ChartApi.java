package trivet.calc.web;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.Operation;
import trivet.chart.CusumChart;
import trivet.chart.EwmaChart;
import trivet.chart.IndividualsChart;
import trivet.chart.Signal;
import trivet.measure.web.ProblemException;

/** Control charts of a process's own history. */
@Path("/api/calc")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
public class ChartApi {

    @POST
    @Path("/control-chart")
    @Operation(summary = "A control chart of values in their order")
    public Map<String, Object> chart(byte[] bytes) {
        ScienceBody body = new ScienceBody(bytes, "chart", "values", "parameters");
        String kind = body.text("chart", null, "individuals", "ewma", "cusum");
        double[] values = body.numbers("values", kind.equals("individuals") ? 2 : 1);
        Map<String, Object> map = switch (kind) {
            case "individuals" -> individuals(body, values);
            case "ewma" -> ewma(body, values);
            default -> cusum(body, values);
        };
        return Science.answer(map, "NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2", "chart");
    }

    private static List<Map<String, Object>> signals(List<Signal> signals) {
        return signals.stream().map(signal -> Map.<String, Object>of("rule", signal.rule(), "index", signal.index())).toList();
    }

    private static Map<String, Object> individuals(ScienceBody body, double[] values) {
        Optional<ScienceBody> parameters = body.object("parameters", "d2", "rules");
        double d2 = parameters.map(p -> p.number("d2", IndividualsChart.D2)).orElse(IndividualsChart.D2);
        Science.positive("parameters.d2", d2);
        List<String> rules = parameters.flatMap(p -> p.texts("rules", IndividualsChart.RULES)).orElse(IndividualsChart.USUAL);
        IndividualsChart chart = IndividualsChart.of(values, d2, Set.copyOf(rules), Set.of());
        Science.finite("values", chart.centre(), chart.upper(), chart.lower());
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("centre", chart.centre());
        map.put("upper", chart.upper());
        map.put("lower", chart.lower());
        map.put("moving_range_mean", chart.movingRangeMean());
        map.put("moving_range_upper", chart.movingRangeUpper());
        map.put("signals", signals(chart.signals()));
        return map;
    }

    private static ScienceBody needed(ScienceBody body, String... known) {
        return body.object("parameters", known).orElseThrow(() -> new ProblemException(400, "parameters", "This field is missing."));
    }

    private static Map<String, Object> ewma(ScienceBody body, double[] values) {
        ScienceBody p = needed(body, "lambda", "target", "sd", "width", "limits");
        boolean exact = p.text("limits", "asymptotic", "asymptotic", "exact").equals("exact");
        EwmaChart chart = Science.refusing("parameters", () -> EwmaChart.of(values, p.number("lambda"), p.number("target"), p.number("sd"), p.number("width", 3), exact));
        Science.finite("values", chart.points());
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("points", Science.plain(chart.points()));
        map.put("upper", Science.plain(chart.upper()));
        map.put("lower", Science.plain(chart.lower()));
        map.put("signals", signals(chart.signals()));
        return map;
    }

    private static Map<String, Object> cusum(ScienceBody body, double[] values) {
        ScienceBody p = needed(body, "target", "allowance", "decision");
        CusumChart chart = Science.refusing("parameters", () -> CusumChart.of(values, p.number("target"), p.number("allowance"), p.number("decision")));
        Science.finite("values", chart.high());
        Science.finite("values", chart.low());
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("high", Science.plain(chart.high()));
        map.put("low", Science.plain(chart.low()));
        map.put("signals", signals(chart.signals()));
        return map;
    }
}
