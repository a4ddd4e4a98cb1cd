package trivet.check;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;

/** Minutes between moments as exact decimals; whole minutes come out whole, others to nine decimals. */
public final class Minutes {

    private static final BigDecimal MILLIS = BigDecimal.valueOf(60_000);

    private Minutes() {
    }

    /** Minutes from one moment to another, negative when it lies before. */
    public static BigDecimal between(Instant from, Instant to) {
        return BigDecimal.valueOf(Duration.between(from, to).toMillis()).divide(MILLIS, 9, RoundingMode.HALF_EVEN);
    }

    /** The moment so many minutes after another, to the millisecond. */
    public static Instant after(Instant from, BigDecimal minutes) {
        return from.plusMillis(minutes.multiply(MILLIS).setScale(0, RoundingMode.HALF_EVEN).longValue());
    }
}
