package trivet.outlook;

import java.time.Instant;
import java.util.List;

/**
 * When a cooling batch will probably meet the target of a stage.
 *
 * @param celsius the target
 * @param eta the likeliest moment
 * @param low the early end of the 95 % interval
 * @param high the late end of it
 * @param late the probability that it misses the deadline
 * @param flagged readings that do not fit the curve of the others
 */
public record Outlook(double celsius, Instant eta, Instant low, Instant high, double late, String words, List<Flagged> flagged) {

    /** A reading that does not fit, and why. */
    public record Flagged(Instant at, String why) {
    }

    /** From this probability of being late on, somebody should act. */
    public static final double ACT = 0.5;
    /** From this probability on, it will miss. */
    public static final double MISS = 0.9;
    /** Up to this probability it is on course. */
    public static final double ON_COURSE = 0.05;
}
