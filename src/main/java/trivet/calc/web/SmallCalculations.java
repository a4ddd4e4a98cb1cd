package trivet.calc.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import trivet.calc.web.Calculators.Result;
import trivet.growth.Growth;
import trivet.growth.GrowthModel;
import trivet.growth.ShelfLife;
import trivet.instrument.BoilingPoint;
import trivet.instrument.Conformance;
import trivet.words.Words;

/** The calculations that need a few numbers only: shelf life, boiling point, conformance, samples. */
final class SmallCalculations {

    private static final double[] LOGS = {0.5, 2};

    private SmallCalculations() {
    }

    private static double number(Map<String, String> form, String field) {
        String text = form.getOrDefault(field, "").strip().replace('−', '-');
        if (!text.matches("[-+]?\\d{1,7}([.,]\\d{1,9})?")) {
            throw new IllegalArgumentException(Words.say("j_calc_number", Words.named("calcfield", field), text));
        }
        return Double.parseDouble(text.replace(',', '.'));
    }

    static List<Result> shelfLife(Map<String, String> form) {
        double celsius = number(form, "celsius");
        GrowthModel.Conditions conditions = new GrowthModel.Conditions(number(form, "ph"), number(form, "water_activity"), Double.NaN);
        if (!(celsius >= -5 && celsius <= 25)) {
            throw new IllegalArgumentException(Words.say("j_calc_shelf_range"));
        }
        List<Result> results = new ArrayList<>();
        for (String id : List.of("l-monocytogenes-rte", "l-monocytogenes-dairy")) {
            GrowthModel model = GrowthModel.of(id);
            double rate = new Growth(model, conditions, false).rate(celsius);
            for (double log : LOGS) {
                double days = ShelfLife.days(rate, log);
                results.add(new Result(Words.say("j_calc_shelf", log, model.organism(), model.matrix()), Double.isNaN(days) ? Words.say("j_calc_never") : Words.say("j_calc_days", one(days, 1)), model.source(),
                        Words.named("caution", "shelf")));
            }
        }
        boolean cannot = ShelfLife.cannotSupportListeria(conditions.ph(), conditions.waterActivity(), Double.POSITIVE_INFINITY);
        results.add(new Result(Words.say("j_calc_category"), cannot ? Words.say("j_calc_category_no") : Words.say("j_calc_category_yes"), Words.say("j_calc_category_source"), Words.named("caution", "shelf")));
        return results;
    }

    static List<Result> boiling(Map<String, String> form) {
        double pressure = form.getOrDefault("pressure", "").isBlank() ? BoilingPoint.pressure(number(form, "altitude")) : number(form, "pressure");
        return List.of(new Result(Words.say("j_calc_boiling", one(pressure, 1)), one(BoilingPoint.celsius(pressure), 2) + " °C", "IAPWS-IF97, ICAO Doc 7488", Words.named("caution", "pressure")));
    }

    static List<Result> conforms(Map<String, String> form) {
        Conformance result = Conformance.of(number(form, "value"), number(form, "uncertainty"), number(form, "lower"), number(form, "upper"), Conformance.USUAL_COVERAGE);
        return List.of(new Result(Words.say("j_calc_conforms"), Words.say("j_calc_conforms_value", one(100 * result.probability(), 1), Words.named("outcome", result.outcome().name()), one(result.acceptLower(), 2),
                one(result.acceptUpper(), 2)), "JCGM 106:2012", Words.named("caution", "conformance")));
    }

    static List<Result> samples(Map<String, String> form) {
        double n = number(form, "n");
        double share = number(form, "failing") / 100;
        if (!(n >= 1 && n <= 10_000 && n == Math.rint(n) && share > 0 && share < 1)) {
            throw new IllegalArgumentException(Words.say("j_calc_samples_range"));
        }
        return List.of(new Result(Words.say("j_calc_samples", (int) n, one(100 * share, 1)), Words.say("j_calc_samples_value", one(100 * ShelfLife.acceptance((int) n, 0, share), 1), ShelfLife.samplesToDetect(0.95, share),
                one(100 * ShelfLife.upperBoundNoneOf((int) n), 1)), Words.say("j_calc_samples_source"), Words.named("caution", "shelf")));
    }

    private static String one(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
