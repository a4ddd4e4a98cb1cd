package trivet.alarm;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The matters that were raised, and what became of each. */
public interface Alarms {

    /**
     * A matter that was raised.
     *
     * @param toldAt when the owner was told outside the kitchen
     * @param toldHow by which way; empty while nobody was told
     * @param seenBy who said to have seen it
     * @param endedAt when it was over by itself
     */
    record Raised(Alarm alarm, Instant raisedAt, Optional<Instant> toldAt, Optional<String> toldHow, Optional<Instant> seenAt, Optional<String> seenBy, Optional<Instant> endedAt) {
    }

    /** Raises each matter that was not raised before, and ends those that are no longer among them. */
    void present(List<Alarm> now);

    /** The matters that still ask for somebody, the oldest first. */
    List<Raised> open();

    /** Those raised between two moments, the first inclusive. */
    List<Raised> between(Instant from, Instant to);

    /** Somebody has seen it; only the first who says so is kept. Whether it was known and nobody had said so. */
    boolean seen(String id, String by);

    /** The owner was told of these. */
    void told(Set<String> ids, String how);
}
