package trivet.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import trivet.chart.IndividualsChart;
import trivet.chart.Signal;
import trivet.check.CoolingRun;
import trivet.check.Reading;
import trivet.deviation.BatchRecord;

/**
 * What a step of a product does from batch to batch: the last core reading of each bake in °C, or the minutes that each cooling took
 * to its first target, on a chart of single values. One history is of one plan version and one probe, so that a change of either
 * begins a new one; a gap of more than seven days breaks it. Control limits are never food-safety limits.
 *
 * @param step {@code core} or {@code cooling}
 * @param version of the plan; 0 for batches that are unplanned
 * @param changed the points at which a run rule signals a change
 */
public record StepHabits(String title, String step, int version, String probe, List<Point> points, IndividualsChart chart, List<Point> changed) {

    /** With fewer values than this no control limits are given; common practice, no source. */
    public static final int LEAST = 20;
    private static final Duration LONGEST_GAP = Duration.ofDays(7);

    /** One batch's value. */
    public record Point(Instant at, String batch, String code, double value) {
    }

    private record Key(String title, String step, int version, String probe) {
    }

    /** Every history with enough values, by product and step; the batches in the order they began. */
    public static List<StepHabits> of(List<BatchRecord> batches) {
        Map<Key, List<Point>> series = new LinkedHashMap<>();
        for (BatchRecord batch : batches) {
            int version = batch.plan().map(plan -> plan.ref().version()).orElse(0);
            batch.cookReadings().stream().filter(r -> !Reading.impossible(r.temperature())).reduce((a, b) -> b).ifPresent(last ->
                    add(series, new Key(batch.title(), "core", version, probe(last)), new Point(last.at(), batch.id(), batch.code(), last.temperature().inCelsius().doubleValue())));
            batch.runs().stream().findFirst().ifPresent(run -> reached(run).ifPresent(minutes ->
                    add(series, new Key(batch.title(), "cooling", version, probe(run.readings().get(run.readings().size() - 1))), new Point(run.origin(), batch.id(), batch.code(), minutes))));
        }
        List<StepHabits> all = new ArrayList<>();
        series.forEach((key, points) -> {
            if (points.size() >= LEAST) {
                all.add(of(key, points));
            }
        });
        return all;
    }

    private static void add(Map<Key, List<Point>> series, Key key, Point point) {
        series.computeIfAbsent(key, k -> new ArrayList<>()).add(point);
    }

    private static String probe(Reading reading) {
        return reading.told().entry().instrument().orElse("–");
    }

    private static Optional<Double> reached(CoolingRun run) {
        return run.verdict().stages().stream().findFirst().flatMap(stage -> stage.reached()).map(minutes -> minutes.doubleValue()).filter(minutes -> !run.readings().isEmpty());
    }

    private static StepHabits of(Key key, List<Point> points) {
        double[] values = points.stream().mapToDouble(Point::value).toArray();
        Set<Integer> breaks = IntStream.range(1, values.length).filter(i -> Duration.between(points.get(i - 1).at(), points.get(i).at()).compareTo(LONGEST_GAP) > 0).boxed().collect(Collectors.toSet());
        IndividualsChart chart = IndividualsChart.of(values, IndividualsChart.D2, Set.copyOf(IndividualsChart.USUAL), breaks);
        List<Point> changed = chart.signals().stream().map(Signal::index).distinct().sorted().map(index -> points.get(index - 1)).toList();
        return new StepHabits(key.title(), key.step(), key.version(), key.probe(), List.copyOf(points), chart, changed);
    }
}
