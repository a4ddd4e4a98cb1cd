package trivet.deviation;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import trivet.check.Reading;
import trivet.ledger.VersionRef;
import trivet.plan.ApprovedPlan;

/**
 * Readings that were taken on a tablet which still held another version of the plan than the one in force at the measurement, as they are by that
 * other version. A sheet of paper that was typed in held none.
 */
final class HeldVersions {

    private final BatchFold fold;
    private final Answers answers;
    private final Map<VersionRef, Map<String, Reading>> judged = new HashMap<>();

    HeldVersions(BatchFold fold, Answers answers) {
        this.fold = fold;
        this.answers = answers;
    }

    /** The version that a reading's record names, where another was in force at the measurement. */
    Optional<ApprovedPlan> held(Reading reading) {
        return reading.told().entry().plan().filter(ref -> reading.told().entry().sheet().isEmpty() && !fold.planAt(reading.at()).map(ApprovedPlan::ref).equals(Optional.of(ref)))
                .flatMap(fold.around.plans()::named);
    }

    /** The same reading by the version that the tablet held, where that comes to another verdict. */
    Optional<Reading> differing(Reading reading) {
        return held(reading).map(plan -> judged.computeIfAbsent(plan.ref(), ref -> by(plan)).get(reading.id())).filter(other -> other.verdict() != reading.verdict());
    }

    private Map<String, Reading> by(ApprovedPlan version) {
        BatchFold other = new BatchFold(fold.around.by(version), fold.entries, fold.told);
        StorageJudgement storage = new StorageJudgement(other, answers);
        Map<String, Reading> all = new HashMap<>();
        Stream.of(other.cook.readings().stream(), other.reheats.stream().flatMap(reheat -> reheat.core().readings().stream()), storage.judgedFood().stream(), storage.judgedHot().stream())
                .flatMap(readings -> readings).forEach(reading -> all.put(reading.id(), reading));
        return all;
    }
}
