package trivet.ledger;

import java.time.Instant;

/** The one way in for records. */
public interface Ledger {

    /**
     * Keeps a record; when this returns it is on disk.
     *
     * @param id the id under which it was sent
     * @param body the bytes as sent
     * @param device the tablet whose credential sent it
     */
    Receipt put(String id, byte[] body, String device);

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
