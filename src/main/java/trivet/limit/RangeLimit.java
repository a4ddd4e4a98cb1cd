package trivet.limit;

import java.util.Optional;
import trivet.measure.Temperature;

/** A lowest and/or highest permitted temperature, for example of chilled storage. */
public record RangeLimit(String id, Optional<Bound> minimum, Optional<Bound> maximum, Basis basis) implements Limit {

    /** Refuses a range without a bound. */
    public RangeLimit {
        if (minimum.isEmpty() && maximum.isEmpty()) {
            throw new IllegalArgumentException("The limit " + id + " has neither a minimum nor a maximum.");
        }
    }

    /** Within when the reading meets both bounds, breached otherwise. */
    public Verdict judge(Temperature reading) {
        boolean met = minimum.map(bound -> bound.meets(reading)).orElse(true)
                && maximum.map(bound -> bound.meets(reading)).orElse(true);
        return met ? Verdict.WITHIN : Verdict.BREACHED;
    }

    @Override
    public RangeLimit adopted() {
        return new RangeLimit(id, minimum, maximum, basis.adoptedByOwner());
    }

    @Override
    public RangeLimit with(LimitOverride override) {
        Basis own = override.basis();
        switch (override.path()) {
            case "minimum":
                return new RangeLimit(id, minimum.map(b -> override.replace(b)), maximum, own);
            case "maximum":
                return new RangeLimit(id, minimum, maximum.map(b -> override.replace(b)), own);
            default:
                throw override.unknownPath();
        }
    }

    /** Both bounds in words. */
    public String words() {
        String low = minimum.map(Bound::words).orElse("");
        String high = maximum.map(Bound::words).orElse("");
        return low.isEmpty() ? high : high.isEmpty() ? low : low + " and " + high;
    }
}
