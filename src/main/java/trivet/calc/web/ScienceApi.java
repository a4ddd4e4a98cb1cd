package trivet.calc.web;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import trivet.calc.web.ScienceBody.Points;
import trivet.check.Minutes;
import trivet.excursion.TimeAbove;
import trivet.forecast.CoolingForecast;
import trivet.instrument.BoilingPoint;
import trivet.instrument.Conformance;
import trivet.lethality.Lethality;
import trivet.measure.web.ProblemException;

/** The models of food science on given numbers; pure. A result informs a person, and passes, fails, releases or destroys nothing. */
@Path("/api/calc")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
public class ScienceApi {

    private static final double REFERENCE = 70;
    private static final double Z = 7.5;
    private static final double SIGMA = 0.5;
    private static final double LEVEL = 0.95;

    @POST
    @Path("/lethality")
    @Operation(summary = "Minutes at a reference temperature that a core curve is worth")
    public Map<String, Object> lethality(byte[] bytes) {
        ScienceBody body = new ScienceBody(bytes, "reference_celsius", "z_celsius", "rule", "mode", "longest_gap_minutes", "floor_celsius", "cap_celsius", "targets", "readings");
        Lethality.Rule rule = switch (body.text("rule", "log-mean", "log-mean", "trapezoid", "least")) {
            case "trapezoid" -> Lethality.Rule.TRAPEZOID;
            case "least" -> Lethality.Rule.LEAST;
            default -> Lethality.Rule.LOG_MEAN;
        };
        boolean conservative = body.optionalText("mode", "conservative").isPresent();
        double reference = body.temperature("reference_celsius", REFERENCE);
        double z = body.number("z_celsius", conservative ? Double.NaN : Z);
        if (conservative && !Double.isNaN(z)) {
            throw new ProblemException(422, "z_celsius", "The conservative mode has two z of its own: give null here.");
        }
        if (conservative && reference != Lethality.CONSERVATIVE_REFERENCE) {
            throw new ProblemException(422, "reference_celsius", "The conservative mode counts at 70 °C.");
        }
        if (!conservative && !(z > 0)) {
            throw new ProblemException(422, "z_celsius", "z is above 0 °C.");
        }
        Lethality.Settings settings = Science.refusing("cap_celsius", () -> new Lethality.Settings(reference, z, rule, conservative, body.number("longest_gap_minutes", Double.POSITIVE_INFINITY),
                body.temperature("floor_celsius", Double.NEGATIVE_INFINITY), body.temperature("cap_celsius", Double.POSITIVE_INFINITY)));
        double[] targets = body.optionalNumbers("targets");
        Points points = body.points("readings", "minute", 2);
        Lethality lethality = new Lethality(settings);
        double[] sums = lethality.cumulative(points.times(), points.celsius());
        Science.finite("readings", sums);
        List<Map<String, Object>> reached = new ArrayList<>();
        for (double target : targets) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("target", target);
            one.put("minute", Science.plain(lethality.reached(target, points.times(), points.celsius(), sums)));
            reached.add(one);
        }
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("minutes_at_reference", sums[sums.length - 1]);
        map.put("cumulative", Science.plain(sums));
        map.put("reached", reached);
        return Science.answer(map, "Process lethality F = ∫ 10^((T − Tref)/z) dt, log-mean rule per segment; Bigelow's method", "lethality", rule == Lethality.Rule.TRAPEZOID ? "trapezoid" : null);
    }

    @POST
    @Path("/cooling-forecast")
    @Operation(summary = "When cooling food will reach a temperature, and how sure that is")
    public Map<String, Object> forecast(byte[] bytes) {
        ScienceBody body = new ScienceBody(bytes, "air_celsius", "air_sd", "sigma", "level", "prior", "targets", "readings");
        double air = body.temperature("air_celsius");
        double airSd = body.number("air_sd", Double.NaN);
        double sigma = body.number("sigma", SIGMA);
        double level = body.number("level", LEVEL);
        Science.positive("air_sd", Double.isNaN(airSd) ? 1 : airSd);
        Science.positive("sigma", sigma);
        if (!(level > 0 && level < 1)) {
            throw new ProblemException(422, "level", "A level lies between 0 and 1, for example 0.95.");
        }
        Optional<ScienceBody> own = body.object("prior", "ln_tau_mean", "ln_tau_sd");
        CoolingForecast.Prior prior = own.map(p -> new CoolingForecast.Prior(p.number("ln_tau_mean"), p.number("ln_tau_sd"))).orElse(null);
        if (prior != null) {
            Science.positive("prior.ln_tau_sd", prior.lnTauSd());
        }
        List<CoolingForecast.Target> targets = body.objects("targets", 1, "celsius", "limit_minutes").stream()
                .map(t -> new CoolingForecast.Target(t.temperature("celsius"), t.number("limit_minutes", Double.NaN))).toList();
        for (int i = 0; i < targets.size(); i++) {
            Science.positive("targets[" + i + "].limit_minutes", Double.isNaN(targets.get(i).limitMinutes()) ? 1 : targets.get(i).limitMinutes());
            if (Double.isNaN(airSd) && air >= targets.get(i).celsius()) {
                throw new ProblemException(422, "targets[" + i + "].celsius", "Air of " + air + " °C never cools food to " + targets.get(i).celsius() + " °C.");
            }
        }
        Points points = body.points("readings", "minute", 1);
        CoolingForecast.Forecast f = Science.refusing("readings", () -> CoolingForecast.of(new CoolingForecast.Question(air, airSd, sigma, level, prior, targets, points.times(), points.celsius())));
        Science.finite("readings", f.t0(), f.tauMinutes(), f.air());
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("t0", f.t0());
        map.put("tau_minutes", f.tauMinutes());
        map.put("air_celsius", f.air());
        map.put("targets", f.arrivals().stream().map(ScienceApi::arrival).toList());
        map.put("flags", f.flags().stream().map(flag -> Map.of("reading", flag.reading(), "why", flag.why())).toList());
        return Science.answer(map, "Newton's law of cooling, maximum a posteriori fit of all readings, interval on ln(time) by the delta method", "forecast",
                Double.isNaN(airSd) ? "air" : null);
    }

    private static Map<String, Object> arrival(CoolingForecast.Arrival arrival) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("celsius", arrival.celsius());
        one.put("eta_minutes", Science.plain(arrival.etaMinutes()));
        one.put("se", Science.plain(arrival.se()));
        one.put("low", Science.plain(arrival.low()));
        one.put("high", Science.plain(arrival.high()));
        one.put("probability_late", Science.plain(arrival.probabilityLate()));
        return one;
    }

    @POST
    @Path("/boiling-point")
    @Operation(summary = "The boiling point of water at an altitude or a pressure")
    public Map<String, Object> boiling(byte[] bytes) {
        ScienceBody body = new ScienceBody(bytes, "altitude_m", "pressure_hpa");
        double altitude = body.number("altitude_m", Double.NaN);
        double given = body.number("pressure_hpa", Double.NaN);
        if (Double.isNaN(altitude) == Double.isNaN(given)) {
            throw new ProblemException(Double.isNaN(altitude) ? 400 : 422, "altitude_m", "Give altitude_m or pressure_hpa, one of them.");
        }
        double pressure = Double.isNaN(given) ? Science.refusing("altitude_m", () -> BoilingPoint.pressure(altitude)) : given;
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("celsius", Science.refusing("pressure_hpa", () -> BoilingPoint.celsius(pressure)));
        map.put("pressure_hpa", pressure);
        return Science.answer(map, "IAPWS-IF97 region 4, equation 31 (R7-97, 2012); ICAO standard atmosphere", "pressure");
    }

    @POST
    @Path("/conformance")
    @Operation(summary = "The probability that a value lies within a tolerance")
    public Map<String, Object> conformance(byte[] bytes) {
        ScienceBody body = new ScienceBody(bytes, "value", "standard_uncertainty", "lower", "upper", "coverage");
        double uncertainty = body.number("standard_uncertainty");
        Science.positive("standard_uncertainty", uncertainty);
        double coverage = body.number("coverage", Conformance.USUAL_COVERAGE);
        if (coverage < 0) {
            throw new ProblemException(422, "coverage", "A coverage factor is not below 0.");
        }
        double value = body.number("value");
        Conformance result = Science.refusing("lower", () -> Conformance.of(value, uncertainty, body.number("lower", Double.NaN), body.number("upper", Double.NaN), coverage));
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("probability", result.probability());
        map.put("accept_lower", Science.plain(result.acceptLower()));
        map.put("accept_upper", Science.plain(result.acceptUpper()));
        return Science.answer(map, "JCGM 106:2012, normal distribution", "conformance");
    }

    @POST
    @Path("/time-above")
    @Operation(summary = "Time above a limit, with unknown time kept apart")
    public Map<String, Object> timeAbove(byte[] bytes) {
        ScienceBody body = new ScienceBody(bytes, "limit_celsius", "longest_gap_minutes", "readings");
        double limit = body.temperature("limit_celsius");
        double gap = body.number("longest_gap_minutes", Double.POSITIVE_INFINITY);
        Science.positive("longest_gap_minutes", gap);
        Points points = body.points("readings", "minute", 2);
        TimeAbove above = TimeAbove.of(limit, gap, points.times(), points.celsius());
        Science.finite("readings", above.minutesAbove(), above.degreeMinutes());
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("minutes_above", above.minutesAbove());
        map.put("degree_minutes", above.degreeMinutes());
        map.put("unknown_minutes", above.unknownMinutes());
        return Science.answer(map, "Straight lines between readings; common practice, no source", "above");
    }
}
