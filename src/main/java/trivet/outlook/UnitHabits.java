package trivet.outlook;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import trivet.chart.CusumChart;
import trivet.chart.EwmaChart;
import trivet.chart.IndividualsChart;
import trivet.chart.Signal;
import trivet.chart.Stretches;
import trivet.check.Minutes;
import trivet.check.Reading;
import trivet.deviation.UnitRecord;
import trivet.excursion.TimeAbove;
import trivet.ledger.Entry;
import trivet.limit.RangeLimit;

/**
 * What a unit's own readings say of it: its control limits and the moments at which it left its habit, its capability against the
 * limit, time above the limit and excursions. Control limits are never food-safety limits.
 *
 * @param lower the lower control limit, °C, as text with one decimal
 * @param upper the upper control limit
 * @param changed when a run rule, a moving average or a cumulative sum signals a change
 * @param capability Cpk against the limit's highest temperature, as text; empty where the limit has none
 * @param minutesAbove whole minutes above the limit in the last seven days, by straight lines; empty without a limit
 * @param minutesUnknown whole minutes in gaps of more than a day
 * @param meanKinetic the mean kinetic temperature of the last seven days, °C, as text with one decimal; empty with fewer than two readings
 */
public record UnitHabits(String lower, String upper, List<Instant> changed, String capability, Optional<Long> minutesAbove, long minutesUnknown, String meanKinetic, List<Away> excursions) {

    private static final double LONGEST_GAP_MINUTES = 24 * 60;
    private static final int LEAST_FOR_A_CHART = 20;
    private static final double LAMBDA = 0.3;
    private static final double WIDTH = 3;
    private static final double ALLOWANCE = 0.5;
    private static final double DECISION = 5;

    /** An excursion above the limit; the end is empty while it lasts. */
    public record Away(Instant from, Optional<Instant> to) {
    }

    /** The habits over a month's readings and a week's time above the limit; empty with fewer than 20 readings in the month. */
    public static Optional<UnitHabits> of(UnitRecord month, UnitRecord week, Optional<RangeLimit> limit) {
        List<Reading> readings = possible(month);
        if (readings.size() < LEAST_FOR_A_CHART) {
            return Optional.empty();
        }
        double[] values = celsius(readings);
        double[] at = minutes(readings);
        Set<Integer> breaks = IntStream.range(1, values.length).filter(i -> at[i] - at[i - 1] > LONGEST_GAP_MINUTES || changed(readings.get(i - 1).told().entry(), readings.get(i).told().entry())).boxed().collect(Collectors.toSet());
        IndividualsChart chart = IndividualsChart.of(values, IndividualsChart.D2, Set.copyOf(IndividualsChart.USUAL), breaks);
        List<Signal> signals = new ArrayList<>(chart.signals());
        if (chart.sigma() > 0) {
            signals.addAll(Stretches.signals(values, breaks, stretch -> EwmaChart.of(stretch, LAMBDA, chart.centre(), chart.sigma(), WIDTH, true).signals()));
            signals.addAll(Stretches.signals(values, breaks, stretch -> CusumChart.of(stretch, chart.centre(), ALLOWANCE * chart.sigma(), DECISION * chart.sigma()).signals()));
        }
        List<Instant> changed = signals.stream().map(signal -> readings.get(signal.index() - 1).at()).distinct().sorted().toList();
        Optional<Double> highest = limit.flatMap(RangeLimit::maximum).map(bound -> bound.celsius().inCelsius().doubleValue());
        String capability = highest.filter(h -> chart.sigma() > 0).map(h -> two(IndividualsChart.capability(chart.centre(), chart.sigma(), Double.NaN, h))).orElse("");
        List<Reading> seven = possible(week);
        if (highest.isEmpty() || seven.size() < 2) {
            return Optional.of(new UnitHabits(one(chart.lower()), one(chart.upper()), changed, capability, Optional.empty(), 0, meanKinetic(seven), List.of()));
        }
        TimeAbove above = TimeAbove.of(highest.get(), LONGEST_GAP_MINUTES, minutes(seven), celsius(seven));
        List<Away> away = TimeAbove.excursions(at, values, highest.get(), 0, highest.get(), 0).stream()
                .map(e -> new Away(moment(readings, e.from()), Double.isNaN(e.to()) ? Optional.empty() : Optional.of(moment(readings, e.to())))).toList();
        return Optional.of(new UnitHabits(one(chart.lower()), one(chart.upper()), changed, capability, Optional.of(Math.round(above.minutesAbove())), Math.round(above.unknownMinutes()), meanKinetic(seven), away));
    }

    /** Whether another instrument read, or another rulebook judged, so that the readings before say nothing of the habit after. */
    private static boolean changed(Entry before, Entry after) {
        return !before.instrument().equals(after.instrument()) || !before.rulebook().equals(after.rulebook());
    }

    /** Each reading weighs half the time to its neighbours. */
    private static String meanKinetic(List<Reading> readings) {
        if (readings.size() < 2) {
            return "";
        }
        double[] at = minutes(readings);
        double[] weights = IntStream.range(0, at.length).mapToDouble(i -> (at[Math.min(at.length - 1, i + 1)] - at[Math.max(0, i - 1)]) / 2).toArray();
        return one(TimeAbove.meanKinetic(celsius(readings), weights));
    }

    private static List<Reading> possible(UnitRecord record) {
        return record.readings().stream().filter(reading -> !Reading.impossible(reading.temperature())).toList();
    }

    private static double[] minutes(List<Reading> readings) {
        return readings.stream().mapToDouble(r -> Minutes.between(readings.get(0).at(), r.at()).doubleValue()).toArray();
    }

    private static double[] celsius(List<Reading> readings) {
        return readings.stream().mapToDouble(r -> r.temperature().inCelsius().doubleValue()).toArray();
    }

    private static Instant moment(List<Reading> readings, double minute) {
        return Minutes.after(readings.get(0).at(), java.math.BigDecimal.valueOf(minute));
    }

    private static String one(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    private static String two(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
