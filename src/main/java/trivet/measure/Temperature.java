package trivet.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Objects;
import java.util.regex.Pattern;
import trivet.words.Words;

/**
 * A temperature as it was read or printed: an exact decimal and its scale, with the digits kept as typed.
 *
 * <p>Two temperatures are equal when they are the same point on the thermodynamic scale: 70 °F equals itself written
 * 70.0 °F, and 212 °F equals 100 °C. Comparison is exact and rounds nothing. The scale and digits are kept beside,
 * because a limit printed in both scales is judged in the scale of the reading.
 */
public record Temperature(BigDecimal value, Scale scale) implements Comparable<Temperature> {

    private static final Pattern DECIMAL = Pattern.compile("[+-]?\\d{1,6}([.,]\\d{1,6})?");
    private static final BigDecimal FREEZING_F = BigDecimal.valueOf(32);
    private static final BigDecimal FIVE = BigDecimal.valueOf(5);
    private static final BigDecimal NINE = BigDecimal.valueOf(9);
    private static final BigDecimal BOUND = BigDecimal.valueOf(1_000_000);

    /** Refuses a value of a million degrees or more, or with more than 12 decimals, which no instrument shows. */
    public Temperature {
        Objects.requireNonNull(scale, "scale");
        if (value.precision() > 30 || value.scale() > 12 || value.scale() < -6 || value.abs().compareTo(BOUND) >= 0) {
            throw new IllegalArgumentException("A temperature has at most six digits before and twelve after the point.");
        }
    }

    /** A temperature in degrees Celsius from its decimal text. */
    public static Temperature celsius(String text) {
        return parse(text, Scale.CELSIUS);
    }

    /** A temperature in degrees Fahrenheit from its decimal text. */
    public static Temperature fahrenheit(String text) {
        return parse(text, Scale.FAHRENHEIT);
    }

    /**
     * Reads a decimal as people type it: optional sign, digits, and a decimal comma or point.
     *
     * @throws IllegalArgumentException with a sentence to show, for anything else (no exponent, no NaN, no second separator)
     */
    public static Temperature parse(String text, Scale scale) {
        String typed = text == null ? "" : text.strip().replace('\u2212', '-');
        if (!DECIMAL.matcher(typed).matches()) {
            throw new IllegalArgumentException("\"" + shortened(typed) + "\" is not a temperature. Type a number such as 74.9.");
        }
        return new Temperature(new BigDecimal(typed.replace(',', '.')), scale);
    }

    private static String shortened(String text) {
        return text.length() > 30 ? text.substring(0, 30) + "…" : text;
    }

    /** Degrees Celsius rounded half-even to two decimals: for drawing and for showing beside, never for judging. */
    public BigDecimal inCelsius() {
        if (scale == Scale.CELSIUS) {
            return value;
        }
        return value.subtract(FREEZING_F).multiply(FIVE).divide(NINE, 2, RoundingMode.HALF_EVEN);
    }

    /** This temperature as nine times its degrees Celsius: exact in both scales, so that nothing is rounded to compare. */
    private BigDecimal ninefoldCelsius() {
        return scale == Scale.CELSIUS ? value.multiply(NINE) : value.subtract(FREEZING_F).multiply(FIVE);
    }

    /** Whether this is warmer than the other, exactly. */
    public boolean above(Temperature other) {
        return compareTo(other) > 0;
    }

    /** Whether this is colder than the other, exactly. */
    public boolean below(Temperature other) {
        return compareTo(other) < 0;
    }

    @Override
    public int compareTo(Temperature other) {
        return scale == other.scale
                ? value.compareTo(other.value)
                : ninefoldCelsius().compareTo(other.ninefoldCelsius());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Temperature && compareTo((Temperature) other) == 0;
    }

    @Override
    public int hashCode() {
        return ninefoldCelsius().stripTrailingZeros().hashCode();
    }

    /** The value as typed with its sign, for example {@code 74.9 °C}. */
    /** As it was read, with the decimal sign of the language of whoever reads. */
    public String words() {
        return Words.number(toString());
    }

    @Override
    public String toString() {
        return value.toPlainString() + " " + scale.symbol();
    }
}
