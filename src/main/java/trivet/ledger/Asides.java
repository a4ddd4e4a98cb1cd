package trivet.ledger;

import java.time.Instant;
import java.util.List;

/** Records that were refused, and that a tablet sent to the owner's review as they were. */
public interface Asides {

    /** A record that was refused; its text is what the tablet kept. */
    record Aside(String device, Instant receivedAt, String reason, String body) {
    }

    /** Keeps one; the same text twice is kept once. */
    void keep(String device, String reason, byte[] body);

    /** The latest ones, newest first. */
    List<Aside> latest(int most);
}
