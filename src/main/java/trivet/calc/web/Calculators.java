package trivet.calc.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import trivet.calc.Pasted;
import trivet.calc.Picture;
import trivet.cooling.CoolingJudge;
import trivet.cooling.CoolingReading;
import trivet.cooling.CoolingVerdict;
import trivet.excursion.TimeAbove;
import trivet.forecast.CoolingForecast;
import trivet.growth.Growth;
import trivet.growth.GrowthModel;
import trivet.lethality.HeatResistance;
import trivet.lethality.HeatResistance;
import trivet.lethality.Lethality;
import trivet.limit.Rulebook;
import trivet.limit.Rulebooks;
import trivet.limit.StagedCooling;
import trivet.measure.Temperature;
import trivet.words.Words;

/** One page of calculators: paste readings, see the curve, the numbers, their sources and cautions; nothing is stored. */
@Path("/calculators")
@Produces(MediaType.TEXT_HTML)
public class Calculators {

    private static final CoolingForecast.Prior NO_HISTORY = new CoolingForecast.Prior(Math.log(75), 0.5);

    private static final double LEAST_HEAT = 50;
    private static final double MOST_REDUCTIONS = 12;
    private static final Map<String, String> FIRST = Map.ofEntries(Map.entry("kind", "readings"), Map.entry("readings", ""), Map.entry("air", "3"), Map.entry("rulebook", "strictest"), Map.entry("scale", "C"),
            Map.entry("celsius", "5"), Map.entry("ph", "6.5"), Map.entry("water_activity", "0.99"), Map.entry("altitude", "0"), Map.entry("pressure", ""), Map.entry("value", "0.3"), Map.entry("uncertainty", "0.14"),
            Map.entry("lower", "-1"), Map.entry("upper", "1"), Map.entry("n", "5"), Map.entry("failing", "5"));

    @Inject
    @Location("calc/calculators.html")
    Template page;
    @Inject
    Rulebooks rulebooks;

    /** A number of the page: what it is, what came out, where it is from and what to beware of. */
    public record Result(String what, String value, String source, String caution) {
    }

    @GET
    public String form() {
        return page(FIRST, null, List.of()).render();
    }

    private TemplateInstance page(Map<String, String> form, String problem, List<Result> results) {
        return page.data("rulebooks", rulebooks.list()).data("form", form).data("problem", problem).data("results", results).data("picture", new RawString("")).data("rows", List.of());
    }

    /** Calculates one of the forms of the page. */
    @POST
    public Response calculate(MultivaluedMap<String, String> fields) {
        Map<String, String> form = new HashMap<>(FIRST);
        fields.forEach((name, values) -> form.put(name, values.get(0)));
        try {
            return Response.ok(switch (form.get("kind")) {
                case "shelf" -> page(form, null, SmallCalculations.shelfLife(form));
                case "boiling" -> page(form, null, SmallCalculations.boiling(form));
                case "conforms" -> page(form, null, SmallCalculations.conforms(form));
                case "samples" -> page(form, null, SmallCalculations.samples(form));
                default -> readings(form);
            }).build();
        } catch (IllegalArgumentException refused) {
            return Response.status(422).entity(page(form, refused.getMessage(), List.of()).render()).build();
        }
    }

    private TemplateInstance readings(Map<String, String> form) {
        String scale = form.get("scale");
        Pasted.Points pasted = Pasted.read(form.get("readings"));
        double[] celsius = pasted.values().clone();
        if (scale.equals("F")) {
            for (int i = 0; i < celsius.length; i++) {
                celsius[i] = (celsius[i] - 32) * 5 / 9;
            }
        }
        Optional<Double> surrounding = form.get("air").isBlank() ? Optional.empty() : Optional.of(degrees(form.get("air"), scale));
        Rulebook rules = rulebooks.find(form.get("rulebook")).orElseThrow(() -> new IllegalArgumentException(Words.say("j_pick_a_rulebook_first"))).withSuggestions();
        List<Result> results = new ArrayList<>();
        Optional<Picture.Band> band = rules.cooling().flatMap(rule -> forecast(rule, pasted.minutes(), celsius, surrounding, results));
        rules.cooling().ifPresent(rule -> cooling(rules, rule, pasted, scale, results));
        lethality(pasted.minutes(), celsius, results);
        growth(pasted.minutes(), celsius, results);
        above(pasted.minutes(), celsius, results);
        return page(form, null, results).data("picture", new RawString(Picture.svg(pasted.minutes(), celsius, band))).data("rows", rows(pasted));
    }

    private static double degrees(String text, String scale) {
        if (!text.strip().matches("[-+]?\\d{1,3}([.,]\\d{1,6})?")) {
            throw new IllegalArgumentException(Words.say("j_calculators_air"));
        }
        double value = Double.parseDouble(text.strip().replace(',', '.'));
        return scale.equals("F") ? (value - 32) * 5 / 9 : value;
    }

    private static List<String> rows(Pasted.Points pasted) {
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < pasted.minutes().length; i++) {
            rows.add(round(pasted.minutes()[i], 1) + " min: " + round(pasted.values()[i], 2));
        }
        return rows;
    }

    private static String round(double value, int digits) {
        return BigDecimal.valueOf(value).setScale(digits, java.math.RoundingMode.HALF_EVEN).stripTrailingZeros().toPlainString();
    }

    private static void cooling(Rulebook rules, StagedCooling rule, Pasted.Points pasted, String scale, List<Result> results) {
        List<CoolingReading> readings = new ArrayList<>();
        for (int i = 0; i < pasted.minutes().length; i++) {
            BigDecimal value = BigDecimal.valueOf(pasted.values()[i]);
            readings.add(new CoolingReading(BigDecimal.valueOf(pasted.minutes()[i]), scale.equals("F") ? Temperature.parse(value.toPlainString(), trivet.measure.Scale.FAHRENHEIT)
                    : Temperature.celsius(value.toPlainString())));
        }
        CoolingVerdict verdict = CoolingJudge.judge(rule, Optional.of(BigDecimal.ZERO), readings, readings.get(readings.size() - 1).minute());
        verdict.stages().forEach(stage -> results.add(new Result(Words.say("j_calc_cooling", rules.title()), Words.named("verdict", stage.verdict().word()) + ". " + stage.words(),
                stage.stage().basis().source() + " (" + stage.stage().basis().standing().words() + ")", rules.caution())));
    }

    private static Optional<Picture.Band> forecast(StagedCooling rule, double[] minutes, double[] celsius, Optional<Double> air, List<Result> results) {
        StagedCooling.Stage last = rule.stages().get(rule.stages().size() - 1);
        double target = last.to().celsius().inCelsius().doubleValue();
        if (air.isEmpty() || air.get() >= target || celsius[celsius.length - 1] <= target) {
            return Optional.empty();
        }
        double[] from = minutes.clone();
        double zero = from[0];
        for (int i = 0; i < from.length; i++) {
            from[i] -= zero;
        }
        CoolingForecast.Arrival arrival = CoolingForecast.of(new CoolingForecast.Question(air.get(), Double.NaN, 0.5, 0.95, NO_HISTORY,
                List.of(new CoolingForecast.Target(target, last.minutes().doubleValue())), from, celsius)).arrivals().get(0);
        if (!Double.isFinite(arrival.etaMinutes())) {
            return Optional.empty();
        }
        results.add(new Result(Words.say("j_calc_forecast", round(target, 1)), Words.say("j_calc_forecast_value", round(zero + arrival.etaMinutes(), 0), round(zero + arrival.low(), 0),
                    round(zero + arrival.high(), 0), round(100 * arrival.probabilityLate(), 0), last.minutes().stripTrailingZeros().toPlainString()), Words.say("j_calc_forecast_source"),
                    Words.named("caution", "forecast") + " " + Words.named("caution", "air")));
        return Optional.of(new Picture.Band(target, zero + arrival.etaMinutes(), zero + arrival.low(), zero + arrival.high()));
    }

    private static void lethality(double[] minutes, double[] celsius, List<Result> results) {
        double most = 0;
        for (double t : celsius) {
            most = Math.max(most, t);
        }
        if (most < LEAST_HEAT) {
            return;
        }
        double counted = new Lethality(new Lethality.Settings(70, Double.NaN, Lethality.Rule.LOG_MEAN, true, Double.POSITIVE_INFINITY, 55, Double.POSITIVE_INFINITY)).total(minutes, celsius);
        results.add(new Result(Words.say("j_calc_lethality"), Words.say("j_calc_minutes", String.format(Locale.ROOT, "%.2f", counted)), Words.say("j_calc_lethality_source"), Words.named("caution", "lethality")));
        for (HeatResistance known : HeatResistance.KNOWN) {
            results.add(new Result(Words.say("j_calc_reductions", known.organism(), known.matrix()), Words.say("j_calc_reductions_value", reductions(known.reductions(minutes, celsius)),
                    round(known.lowest(), 1), round(known.highest(), 1)), known.source(), Words.named("caution", "lethality")));
        }
    }

    private static String reductions(double log) {
        return log > MOST_REDUCTIONS ? Words.say("j_reductions_many") : String.format(Locale.ROOT, "%.1f", log);
    }

    private static void growth(double[] minutes, double[] celsius, List<Result> results) {
        double[] hours = minutes.clone();
        for (int i = 0; i < hours.length; i++) {
            hours[i] /= 60;
        }
        for (String id : List.of("b-cereus-cooked-rice", "c-perfringens-beef", "c-perfringens-chicken")) {
            GrowthModel model = GrowthModel.of(id);
            Growth growth = new Growth(model, GrowthModel.Conditions.NONE, true);
            double[] integrals = growth.integrals(hours, celsius);
            double grown = growth.log(integrals[integrals.length - 1], 2, model.maxLog()) - 2;
            results.add(new Result(Words.say("j_calc_growth", model.organism(), model.matrix()), Words.say("j_calc_growth_value", String.format(Locale.ROOT, "%.2f", grown), round(model.spreadLog(), 1)), model.source(),
                    Words.named("caution", "growth")));
        }
    }

    private static void above(double[] minutes, double[] celsius, List<Result> results) {
        for (double limit : new double[] {5, 8}) {
            TimeAbove above = TimeAbove.of(limit, Double.POSITIVE_INFINITY, minutes, celsius);
            results.add(new Result(Words.say("j_calc_above", round(limit, 0)), Words.say("j_calc_above_value", round(above.minutesAbove(), 1), round(above.degreeMinutes(), 0)), Words.say("j_calc_above_source"),
                    Words.named("caution", "above")));
        }
    }
}
