package trivet.ledger;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What the site says of itself: people, units, confirmed rulebooks and so on. Each change is a further version. */
public interface Register {

    /** One version of one thing. */
    record Version(long number, String kind, String id, String by, Instant at, Fields body) {
    }

    /** Writes a further version; on disk when this returns. */
    Version write(String kind, String id, String by, Fields body);

    /** All versions of a kind in the order of writing. */
    List<Version> all(String kind);

    /** The latest version of every thing of a kind, in the order in which the things first appeared. */
    List<Version> latest(String kind);

    /** The number of the last version of anything; 0 for none. */
    long lastNumber();

    /** The latest version of one thing. */
    Optional<Version> latest(String kind, String id);
}
