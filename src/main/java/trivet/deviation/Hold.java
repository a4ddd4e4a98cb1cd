package trivet.deviation;

import java.time.Instant;

/**
 * A reason why a batch must not be sold.
 *
 * @param id what a release must list to end it: a deviation's, a check's or a record's id
 * @param probeFood whether probing the food of the batch is what may end it
 */
public record Hold(String id, String words, Instant since, boolean probeFood) {

    /** A hold that probing the food does not end. */
    public Hold(String id, String words, Instant since) {
        this(id, words, since, false);
    }
}
