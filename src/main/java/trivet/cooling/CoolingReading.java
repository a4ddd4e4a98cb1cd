package trivet.cooling;

import java.math.BigDecimal;
import trivet.measure.Temperature;

/**
 * A temperature at a time of a cooling curve.
 *
 * @param minute minutes from any fixed moment, exact; may be negative
 */
public record CoolingReading(BigDecimal minute, Temperature temperature) {
}
