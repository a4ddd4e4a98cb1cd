package trivet.ledger;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Records that were refused, and that a tablet sent to the owner's review as they were. */
public interface Asides {

    /**
     * A record that was refused; its text is what the tablet kept.
     *
     * @param taken whether the owner has taken it in since
     */
    record Aside(long number, String device, Instant receivedAt, String reason, String body, boolean taken) {
    }

    /** One of them. */
    Optional<Aside> find(long number);

    /** It was taken in under a receive number. */
    void taken(long number, long receiveNumber, String by);

    /** Keeps one; the same text twice is kept once. */
    void keep(String device, String reason, byte[] body);

    /** The latest ones, newest first. */
    List<Aside> latest(int most);
}
