package trivet.deviation;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import trivet.batch.Dispute;
import trivet.batch.Life;
import trivet.batch.Told;
import trivet.check.Check;
import trivet.check.CoolingRun;
import trivet.check.Reading;
import trivet.ledger.Entry;
import trivet.limit.Verdict;
import trivet.plan.ApprovedPlan;

/**
 * Everything that the records say of one batch, as of a moment.
 *
 * @param plan the version in force at its start
 * @param planNow the version that judges what is measured now
 * @param reheatOffered whether it may be reheated now; {@code reheatRefused} says why not
 * @param adjustments readings past an operating limit that no adjustment names yet
 */
public record BatchRecord(String id, String code, String title, boolean unplanned, String line, int trays, int pieces, String startedBy,
        Instant startedAt, LocalDate day, Optional<ApprovedPlan> plan, Optional<ApprovedPlan> planNow, Life life, Optional<String> parent, Optional<Instant> outOfOven,
        Optional<Instant> putAwayAt, Optional<String> unit, Optional<LocalDate> useBy, Verdict cook, List<Reading> cookReadings, Verdict cooling,
        List<CoolingRun> runs, List<Check> checks, List<Deviation> deviations, List<Hold> holds, List<Told> told, List<Entry> entries, Next next,
        List<Reading> reheatReadings, List<Reading> hotReadings, List<Reading> foodReadings, boolean reheatOffered, String reheatRefused, List<Reading> adjustments) {

    /** What to do now: a sentence, and the screen of its one big key. */
    public record Next(String words, String act) {
    }

    /** The same batch with other verdicts, deviations and holds laid over. */
    BatchRecord with(Verdict otherCook, Verdict otherCooling, List<Deviation> otherDeviations, List<Hold> otherHolds, Next otherNext) {
        return new BatchRecord(id, code, title, unplanned, line, trays, pieces, startedBy, startedAt, day, plan, planNow, life, parent, outOfOven, putAwayAt, unit, useBy,
                otherCook, cookReadings, otherCooling, runs, checks, otherDeviations, otherHolds, told, entries, otherNext, reheatReadings, hotReadings, foodReadings,
                reheatOffered, reheatRefused, adjustments);
    }

    /** Whether the batch is on hold. */
    public boolean held() {
        return !holds.isEmpty();
    }

    /** The last reading while it cools, in order of time. */
    public Optional<Reading> lastCooling() {
        return runs.isEmpty() ? Optional.empty() : runs.get(runs.size() - 1).readings().stream().reduce((a, b) -> b);
    }

    /** Its records that tablets corrected differently, and of which nobody has picked a version. */
    public List<Dispute> disputes() {
        return Told.disputes(entries);
    }

    /** The corrections to its records and what was written so late that it waits for acceptance. */
    public List<Entry> waiting() {
        return Told.waiting(entries);
    }
}
