package trivet.ledger;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * A record as it was received.
 *
 * @param time when it was measured or done and when it was typed, as well as the tablet's clocks tell
 * @param receivedAt when the server had it on disk
 * @param verdict what was said of it at receipt
 */
public record Entry(long receiveNumber, String id, String kind, String site, String device, long deviceSeq, String person,
        Optional<String> batch, Optional<String> check, Optional<VersionRef> plan, Optional<VersionRef> rulebook,
        Optional<String> instrument, String source, Optional<String> sheet, BestTime time,
        Instant receivedAt, String zone, Fields data, String sha256, Fields verdict) {

    private static final Duration LATER = Duration.ofMinutes(15);
    private static final Duration MUCH_LATER = Duration.ofHours(1);
    private static final Duration AHEAD = Duration.ofMinutes(2);

    /** When it was measured or done. */
    public Instant claimedAt() {
        return time.claimed();
    }

    /** When it was typed. */
    public Instant enteredAt() {
        return time.entered();
    }

    /** Whether it was entered more than 15 minutes after its claimed time. */
    public boolean writtenLater() {
        return Duration.between(claimedAt(), enteredAt()).compareTo(LATER) > 0;
    }

    /** Whether it was entered more than an hour after its claimed time, so that it cannot better a verdict unaccepted. */
    public boolean writtenMuchLater() {
        return Duration.between(claimedAt(), enteredAt()).compareTo(MUCH_LATER) > 0;
    }

    /** Whether its claimed time lay ahead when it was received. */
    public boolean fromTheFuture() {
        return Duration.between(receivedAt, claimedAt()).compareTo(AHEAD) > 0;
    }
}
