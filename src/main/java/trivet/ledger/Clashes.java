package trivet.ledger;

import java.time.Instant;
import java.util.List;

/** Records that came under an id that another record has already; the first counts, the others are kept for review. */
public interface Clashes {

    /** The latest ones, newest first. */
    List<Clash> latest(int most);

    /** A record that came second under its id. */
    record Clash(String id, Instant receivedAt, String body) {
    }
}
