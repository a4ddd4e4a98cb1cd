package trivet.deviation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import trivet.limit.Verdict;
import trivet.study.OpenPoints;

/** Batches with readings taken in Trivet, as evidence of own trials: their core was within and their cooling not breached, and nothing holds them. */
@ApplicationScoped
class TrialBatches implements OpenPoints.Trials {

    private static final Duration BACK = Duration.ofDays(730);

    @Inject
    Daybook daybook;
    @Inject
    Clock clock;

    @Override
    public int found(List<String> codes) {
        if (codes.isEmpty()) {
            return 0;
        }
        Set<String> wanted = new HashSet<>(codes);
        return daybook.begun(clock.instant().minus(BACK), clock.instant()).stream().filter(batch -> wanted.contains(batch.code()) && !batch.cookReadings().isEmpty() && batch.cook() == Verdict.WITHIN
                && batch.cooling() == Verdict.WITHIN && !batch.held()).map(BatchRecord::code).collect(Collectors.toSet()).size();
    }
}
