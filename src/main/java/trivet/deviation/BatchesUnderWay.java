package trivet.deviation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import trivet.plan.ReviewNeeds;
import trivet.plan.UnderWay;

/** Counts the batches of a product that are not over, and the deviations of those that were begun. */
@ApplicationScoped
class BatchesUnderWay implements UnderWay {

    @Inject
    Daybook daybook;
    @Inject
    Clock clock;

    @Override
    public int count(String product) {
        return (int) daybook.underway().stream().filter(batch -> !batch.life().over() && batch.plan().map(plan -> plan.ref().id().equals(product)).orElse(false)).count();
    }

    @Override
    public List<ReviewNeeds.Repeats> deviations(String product, Instant since) {
        Map<String, List<Instant>> byLimit = new TreeMap<>();
        daybook.begun(since, clock.instant()).stream().filter(batch -> batch.plan().map(plan -> plan.ref().id().equals(product)).orElse(false)).flatMap(batch -> batch.deviations().stream()).filter(Deviation::breach)
                .forEach(deviation -> byLimit.computeIfAbsent(deviation.limit(), limit -> new ArrayList<>()).add(deviation.since()));
        return byLimit.entrySet().stream().map(entry -> new ReviewNeeds.Repeats(entry.getKey(), List.copyOf(entry.getValue()))).toList();
    }
}
