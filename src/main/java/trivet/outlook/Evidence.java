package trivet.outlook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import trivet.check.CoolingRun;
import trivet.check.Minutes;
import trivet.check.Reading;
import trivet.deviation.BatchRecord;
import trivet.growth.Growth;
import trivet.growth.GrowthModel;
import trivet.lethality.Lethality;
import trivet.words.Words;

/** What the models say of a breached or unjudged cooling, as evidence for the person who decides; it decides nothing. */
public record Evidence(String what, String value, String source, String caution) {

    private static final List<String> MODELS = List.of("b-cereus-cooked-rice", "c-perfringens-beef", "c-perfringens-chicken");
    private static final double START_LOG = 2;
    private static final double LONGEST_GAP_MINUTES = 5;
    private static final double FLOOR = 55;
    private static final double CAP = 75;

    /** The growth over each curve of a batch's cooling, as it went and with another hour at the last temperature. */
    public static List<Evidence> of(BatchRecord batch) {
        List<Evidence> all = new ArrayList<>();
        for (CoolingRun run : batch.runs()) {
            List<Reading> readings = run.readings().stream().filter(r -> !Reading.impossible(r.temperature())).toList();
            if (readings.size() < 2) {
                continue;
            }
            double[] hours = readings.stream().mapToDouble(r -> Minutes.between(readings.get(0).at(), r.at()).doubleValue() / 60).toArray();
            double[] celsius = readings.stream().mapToDouble(r -> r.temperature().inCelsius().doubleValue()).toArray();
            for (String id : MODELS) {
                all.add(of(GrowthModel.of(id), hours, celsius));
            }
        }
        return all;
    }

    /** Minutes at 70 °C that the core readings of one piece saw, by the conservative rule; empty without two of one piece. */
    public static Optional<String> heat(BatchRecord batch) {
        return batch.cookReadings().stream().filter(r -> r.piece().isPresent() && !Reading.impossible(r.temperature())).collect(Collectors.groupingBy(r -> r.piece().get())).values().stream()
                .filter(list -> list.size() > 1).map(list -> {
                    List<Reading> ordered = list.stream().sorted(Comparator.comparing(Reading::at)).toList();
                    double[] minutes = ordered.stream().mapToDouble(r -> Minutes.between(ordered.get(0).at(), r.at()).doubleValue()).toArray();
                    double[] celsius = ordered.stream().mapToDouble(r -> r.temperature().inCelsius().doubleValue()).toArray();
                    return new Lethality(new Lethality.Settings(Lethality.CONSERVATIVE_REFERENCE, Double.NaN, Lethality.Rule.LOG_MEAN, true, LONGEST_GAP_MINUTES, FLOOR, CAP)).total(minutes, celsius);
                }).min(Double::compare).map(least -> Words.say("j_heat_seen", log(least)));
    }

    private static Evidence of(GrowthModel model, double[] hours, double[] celsius) {
        Growth growth = new Growth(model, GrowthModel.Conditions.NONE, true);
        double[] integrals = growth.integrals(hours, celsius);
        double last = integrals[integrals.length - 1];
        double grown = growth.log(last, START_LOG, model.maxLog()) - START_LOG;
        double more = growth.log(last + growth.rate(celsius[celsius.length - 1]), START_LOG, model.maxLog()) - START_LOG;
        return new Evidence(Words.say("j_calc_growth", model.organism(), model.matrix()), Words.say("j_evidence_growth", log(grown), log(model.spreadLog()), log(more)), model.source(), Words.named("caution", "growth"));
    }

    private static String log(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
