package trivet.limit;

import java.math.BigDecimal;
import java.util.Optional;
import trivet.measure.Scale;
import trivet.measure.Temperature;
import trivet.words.Words;

/**
 * A lowest or highest permitted temperature, inclusive or exclusive as its source says. A bound printed in both scales
 * keeps both numbers, and a reading is judged against the number in its own unit; a bound printed only in °C is compared
 * exactly with a reading in °F.
 *
 * @param minimum true for a lowest permitted value, false for a highest
 * @param inclusive whether the number itself is permitted
 */
public record Bound(boolean minimum, boolean inclusive, Temperature celsius, Optional<Temperature> fahrenheit) {

    /** The printed number in the unit of the reading where there is one, else the number in °C. */
    public Temperature inUnitOf(Temperature reading) {
        return reading.scale() == Scale.FAHRENHEIT ? fahrenheit.orElse(celsius) : celsius;
    }

    /** Whether the reading is on the permitted side. */
    public boolean meets(Temperature reading) {
        int side = reading.compareTo(inUnitOf(reading));
        return side == 0 ? inclusive : minimum == side > 0;
    }

    /** Whether this bound forbids something that the other, of the same side, permits, compared in °C. */
    public boolean stricterThan(Bound other) {
        int side = celsius.compareTo(other.celsius);
        return side == 0 ? !inclusive && other.inclusive : minimum == side > 0;
    }

    /** Distance in °C between a reading and the bound, never negative; a convenience for words, never for judging. */
    public BigDecimal distanceCelsius(Temperature reading) {
        return reading.inCelsius().subtract(celsius.inCelsius()).abs();
    }

    /** The number in words, for example "at least 63 °C" or "below 8 °C". */
    public String words() {
        String side = minimum ? (inclusive ? Words.say("j_at_least") + " " : Words.say("j_above") + " ") : (inclusive ? Words.say("j_at_most") + " " : Words.say("j_below") + " ");
        return side + celsius.words() + fahrenheit.map(f -> " (" + f.words() + ")").orElse("");
    }
}
