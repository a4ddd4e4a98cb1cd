package trivet.cooling;

import java.math.BigDecimal;
import java.util.Optional;
import trivet.limit.StagedCooling.Stage;
import trivet.limit.Verdict;

/**
 * The verdict on one stage, with the times it rests on, all in minutes of the curve.
 *
 * @param reason why it is unjudged; empty exactly when it is not
 * @param clock from when the stage counts; of a stage counted from passing, the earliest that may be
 * @param latestClock the latest moment from which the stage may count
 * @param deadline {@code clock} plus the stage's minutes
 * @param reached the first reading that meets the target with none above it after
 * @param minutesLeft time to the deadline, of an open stage
 * @param lateBy time from the deadline to the first reading seen on the target, of one taken late
 */
public record StageVerdict(Stage stage, Verdict verdict, Optional<Reason> reason, Optional<BigDecimal> clock,
        Optional<BigDecimal> latestClock, Optional<BigDecimal> deadline, Optional<BigDecimal> reached,
        Optional<BigDecimal> minutesLeft, Optional<BigDecimal> lateBy, String words) {

    /** Whether the stage is neither passed nor failed and only waits for its time. */
    public boolean waiting() {
        return reason.map(Reason::waiting).orElse(false);
    }
}
