package trivet.limit;

import java.time.LocalDate;
import java.util.OptionalInt;

/**
 * How the days of a use-by date are counted.
 *
 * @param preparationIsDayOne true where the day of preparation is day 1 (US Food Code 3-501.17), false where it is day 0
 * @param mostDays the most days the rule allows, counted that way; empty where the law leaves it to the maker
 */
public record UseByRule(String id, boolean preparationIsDayOne, OptionalInt mostDays, Basis basis) implements Limit {

    /** The last day on which the food may be used, inclusive, for a life of so many days. */
    public LocalDate lastDay(LocalDate prepared, int days) {
        int allowed = mostDays.isPresent() ? Math.min(days, mostDays.getAsInt()) : days;
        return prepared.plusDays(preparationIsDayOne ? allowed - 1L : allowed);
    }

    @Override
    public UseByRule adopted() {
        return new UseByRule(id, preparationIsDayOne, mostDays, basis.adoptedByOwner());
    }

    @Override
    public UseByRule with(LimitOverride override) {
        if (!override.path().equals("days")) {
            throw override.unknownPath();
        }
        return new UseByRule(id, preparationIsDayOne, OptionalInt.of(override.days()), override.basis());
    }
}
