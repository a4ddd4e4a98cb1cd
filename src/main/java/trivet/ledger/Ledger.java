package trivet.ledger;

import java.time.Instant;
import java.util.Optional;

/** The one way in for records. */
public interface Ledger {

    /**
     * Keeps a record; when this returns it is on disk.
     *
     * @param id the id under which it was sent
     * @param body the bytes as sent
     * @param device the tablet whose credential sent it
     * @param sent the tablet's clocks at the moment of sending, where it said them
     */
    Receipt put(String id, byte[] body, String device, Optional<BestTime.Sending> sent);

    /** As {@link #put}, for records of the demo that are given their time of receipt. */
    Receipt put(String id, byte[] body, String device, Instant receivedAt);

    /**
     * What became of a record.
     *
     * @param outcome kept for the first time, repeated, or clashing with another body under its id
     */
    record Receipt(Outcome outcome, String id, String sha256, long receiveNumber, Fields verdict) {
    }

    /** What became of a record. */
    enum Outcome {
        KEPT, REPEATED, CLASHING
    }
}
