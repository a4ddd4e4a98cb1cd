package trivet.limit;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import trivet.measure.Quantity;
import trivet.measure.Temperature;

/**
 * An owner's own number in place of a rulebook's, with the reason and the source of the new number.
 *
 * @param path which number: {@code minimum}, {@code maximum}, {@code rows[0].celsius}, {@code rows[0].seconds},
 *     {@code stages[1].from}, {@code stages[1].to}, {@code stages[1].minutes}, {@code bands[0].minutes} or {@code days}
 * @param value the number with its unit, for example {@code "5 °C"}, {@code "90 min"}, {@code "3 days"}
 */
public record LimitOverride(String limit, String path, String value, String reason, String source, Standing standing) {

    private static final Pattern INDEXED = Pattern.compile("([a-z]+)\\[(\\d{1,3})]\\..+");

    /** Refuses an override without a reason or a source. */
    public LimitOverride {
        if (reason.isBlank() || source.isBlank()) {
            throw new IllegalArgumentException("Your own number for " + limit + " needs a reason and the source of the number.");
        }
    }

    Basis basis() {
        return Basis.override(standing, source, reason);
    }

    Bound replace(Bound bound) {
        Temperature number = Quantity.temperature(value);
        if (number.scale() == trivet.measure.Scale.FAHRENHEIT) {
            return new Bound(bound.minimum(), bound.inclusive(), number, Optional.of(number));
        }
        return new Bound(bound.minimum(), bound.inclusive(), number, Quantity.fahrenheitBeside(value));
    }

    BigDecimal minutes() {
        return Quantity.minutes(value);
    }

    BigDecimal seconds() {
        return Quantity.seconds(value);
    }

    int days() {
        return Quantity.days(value);
    }

    int index(String list, int size) {
        Matcher matcher = INDEXED.matcher(path);
        if (!matcher.matches() || !matcher.group(1).equals(list) || Integer.parseInt(matcher.group(2)) >= size) {
            throw unknownPath();
        }
        return Integer.parseInt(matcher.group(2));
    }

    IllegalArgumentException unknownPath() {
        return new IllegalArgumentException("The limit " + limit + " has no number called \"" + path + "\".");
    }

    /**
     * Whether the number permits more than the one it replaces: a lower minimum, a higher maximum, a longer time, a
     * shorter hold. A number of the law may be loosened only with a second confirmation in words.
     */
    public boolean looserThan(Limit original) {
        BigDecimal before = LimitNumbers.at(original, path);
        BigDecimal after = LimitNumbers.at(original.with(this), path);
        boolean moreIsStricter = path.equals("minimum") || path.endsWith(".seconds") || path.endsWith(".celsius")
                || path.endsWith(".from");
        return moreIsStricter ? after.compareTo(before) < 0 : after.compareTo(before) > 0;
    }
}
