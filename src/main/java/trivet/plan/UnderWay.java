package trivet.plan;

import java.time.Instant;
import java.util.List;

/** What the day's work knows of a product, for those who change its plan. */
public interface UnderWay {

    /** The number of batches that are not over, which a new version would reach. */
    int count(String product);

    /** The deviations of a product's batches since a moment, by control. */
    List<ReviewNeeds.Repeats> deviations(String product, Instant since);
}
