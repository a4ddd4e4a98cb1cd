package trivet.deviation;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import trivet.batch.Told;
import trivet.ledger.Entry;
import trivet.limit.Rulebook;
import trivet.measure.Temperature;

/**
 * What a probe measured between its last good check and a failed one, control points first, and whether the reading would fall
 * on the other side of its limit if it were corrected by the error seen in ice. The raw reading stays what it is.
 *
 * @param error what the probe showed more than it should have, °C
 * @param turns whether the corrected reading would no longer meet the temperature that the raw one met
 */
public record ProbeTouch(Entry entry, Temperature read, BigDecimal error, boolean controlPoint, boolean turns) {

    private static final Set<String> CONTROL_POINTS = Set.of("cook-reading", "cooling-reading", "reheat-reading", "food-reading", "hot-hold-reading");

    /** The readings between the last good check before the last failed one and now, while that failure stands. */
    static List<ProbeTouch> of(String probe, List<Told> checks, ProbeBook book, List<Entry> records, Surroundings.Rules rules) {
        List<Told> own = checks.stream().filter(told -> told.kind().equals("probe-check") && told.data().text("probe").map(probe::equals).orElse(false)).toList();
        if (own.isEmpty() || book.passed(own.get(own.size() - 1).data(), own.get(own.size() - 1).at())) {
            return List.of();
        }
        Told failed = own.get(own.size() - 1);
        Optional<Told> good = own.stream().filter(told -> book.passed(told.data(), told.at())).reduce((a, b) -> b);
        Optional<BigDecimal> error = failed.data().temperature("temperature").filter(t -> failed.data().text("method").map("ice"::equals).orElse(false)).map(Temperature::inCelsius);
        List<ProbeTouch> touched = new ArrayList<>();
        for (Entry entry : records) {
            Optional<Temperature> read = entry.data().temperature("temperature");
            boolean between = good.map(g -> entry.claimedAt().isAfter(g.at())).orElse(true) && !entry.kind().equals("probe-check");
            if (between && read.isPresent() && entry.instrument().map(probe::equals).orElse(false)) {
                boolean turns = error.isPresent() && rules.at(entry.claimedAt()).map(c -> turns(entry.kind(), c.rulebook(), read.get(), error.get())).orElse(false);
                touched.add(new ProbeTouch(entry, read.get(), error.orElse(BigDecimal.ZERO), CONTROL_POINTS.contains(entry.kind()), turns));
            }
        }
        touched.sort(Comparator.comparing((ProbeTouch touch) -> !touch.turns()).thenComparing(touch -> !touch.controlPoint()).thenComparing(touch -> touch.entry().claimedAt()));
        return touched;
    }

    private static boolean turns(String kind, Rulebook rulebook, Temperature read, BigDecimal error) {
        Temperature corrected = Temperature.celsius(read.inCelsius().subtract(error).toPlainString());
        if (kind.equals("cook-reading") || kind.equals("reheat-reading")) {
            return rulebook.alternatives(kind.equals("cook-reading") ? "core-cook" : "reheat")
                    .map(limit -> limit.rows().stream().anyMatch(row -> row.least().meets(read) && !row.least().meets(corrected))).orElse(false);
        }
        if (kind.equals("cooling-reading")) {
            return rulebook.cooling().map(rule -> rule.stages().stream().anyMatch(stage -> stage.to().meets(read) && !stage.to().meets(corrected))).orElse(false);
        }
        return rulebook.range(kind.equals("hot-hold-reading") ? "hot-holding" : "chilled-storage")
                .map(limit -> limit.judge(read) != limit.judge(corrected)).orElse(false);
    }
}
