package trivet.deviation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import trivet.plan.UnderWay;

/** Counts the batches of a product that are not over. */
@ApplicationScoped
class BatchesUnderWay implements UnderWay {

    @Inject
    Daybook daybook;

    @Override
    public int count(String product) {
        return (int) daybook.underway().stream().filter(batch -> !batch.life().over() && batch.plan().map(plan -> plan.ref().id().equals(product)).orElse(false)).count();
    }
}
