package trivet.cooling;

import java.math.BigDecimal;
import java.util.Optional;
import trivet.measure.Temperature;

/**
 * One piece that was probed in its core.
 *
 * @param lowest the lowest temperature seen during the hold
 * @param heldSeconds how long it was seen held; 0 for an instantaneous reading; empty when the hold was not recorded
 */
public record CookPiece(Temperature lowest, Optional<BigDecimal> heldSeconds) {

    /** Refuses a negative hold. */
    public CookPiece {
        if (heldSeconds.isPresent() && heldSeconds.get().signum() < 0) {
            throw new IllegalArgumentException("A hold is not shorter than 0 seconds.");
        }
    }
}
