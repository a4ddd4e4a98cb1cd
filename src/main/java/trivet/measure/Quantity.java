package trivet.measure;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import trivet.words.Words;

/**
 * Reads a number with its unit as plans, rulebooks and owners write it: {@code "74.9 °C"}, {@code "57 °C / 135 °F"},
 * {@code "30 s"}, {@code "90 min"}, {@code "2 h"}, {@code "5 days"}. A number without a unit is refused.
 */
public final class Quantity {

    private static final Pattern TIME = Pattern.compile("(\\d{1,6}(?:[.,]\\d{1,3})?) ?(s|min|h|days?)");
    private static final Pattern DEGREES = Pattern.compile("([-\u2212+]?\\d{1,4}(?:[.,]\\d{1,3})?) ?°([CF])");
    private static final BigDecimal SIXTY = BigDecimal.valueOf(60);

    private Quantity() {
    }

    /** The first temperature of the text. */
    public static Temperature temperature(String text) {
        return degrees(text.split("/", 2)[0].strip(), text);
    }

    /** The number in °F that is printed beside one in °C, if there is one. */
    public static Optional<Temperature> fahrenheitBeside(String text) {
        String[] both = text.split("/", 2);
        if (both.length == 1) {
            return Optional.empty();
        }
        Temperature beside = degrees(both[1].strip(), text);
        if (beside.scale() != Scale.FAHRENHEIT) {
            throw new IllegalArgumentException("\"" + text + "\": the number beside is written in °F.");
        }
        return Optional.of(beside);
    }

    private static Temperature degrees(String part, String whole) {
        Matcher matcher = DEGREES.matcher(part);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("\"" + whole + "\" is not a temperature with its unit, such as \"74.9 °C\".");
        }
        return Temperature.parse(matcher.group(1), Scale.ofLetter(matcher.group(2)));
    }

    /** A time in minutes, exact, from s, min or h. A second is 1/60 min, kept to nine decimals, half-even. */
    public static BigDecimal minutes(String text) {
        BigDecimal seconds = seconds(text);
        return seconds.divide(SIXTY, 9, java.math.RoundingMode.HALF_EVEN).stripTrailingZeros();
    }

    /** A time in seconds from s, min or h. */
    public static BigDecimal seconds(String text) {
        Matcher matcher = time(text);
        BigDecimal number = new BigDecimal(matcher.group(1).replace(',', '.'));
        return switch (matcher.group(2)) {
            case "s" -> number;
            case "min" -> number.multiply(SIXTY);
            case "h" -> number.multiply(SIXTY).multiply(SIXTY);
            default -> throw notATime(text);
        };
    }

    /** A whole number of days. */
    public static int days(String text) {
        Matcher matcher = time(text);
        if (!matcher.group(2).startsWith("day") || matcher.group(1).matches(".*[.,].*")) {
            throw new IllegalArgumentException("\"" + text + "\" is not a whole number of days, such as \"5 days\".");
        }
        return Integer.parseInt(matcher.group(1));
    }

    private static Matcher time(String text) {
        Matcher matcher = TIME.matcher(text.strip());
        if (!matcher.matches()) {
            throw notATime(text);
        }
        return matcher;
    }

    private static IllegalArgumentException notATime(String text) {
        return new IllegalArgumentException("\"" + text + "\" is not a time with its unit, such as \"30 s\", \"90 min\" or \"2 h\".");
    }

    /** A time in words: whole minutes as minutes, anything else as seconds, for example "2 min" and "30 s". */
    public static String duration(BigDecimal seconds) {
        BigDecimal[] minutes = seconds.divideAndRemainder(BigDecimal.valueOf(60));
        boolean whole = seconds.compareTo(BigDecimal.valueOf(60)) >= 0 && minutes[1].signum() == 0;
        return whole ? Words.say("j_min", minutes[0].stripTrailingZeros().toPlainString()) : seconds.stripTrailingZeros().toPlainString() + " s";
    }
}
