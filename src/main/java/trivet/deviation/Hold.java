package trivet.deviation;

import java.time.Instant;

/**
 * A reason why a batch must not be sold.
 *
 * @param id what a release must list to end it: a deviation's, a check's or a record's id
 */
public record Hold(String id, String words, Instant since) {
}
