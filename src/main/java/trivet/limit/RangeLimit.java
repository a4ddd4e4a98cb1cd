package trivet.limit;

import java.util.Optional;
import trivet.measure.Temperature;
import trivet.words.Words;

/**
 * A lowest and/or highest permitted temperature, for example of chilled storage.
 *
 * @param operating an operating limit, stricter than the critical one of its side: past it the process is adjusted, which is
 *     no deviation
 */
public record RangeLimit(String id, Optional<Bound> minimum, Optional<Bound> maximum, Optional<Bound> operating, Basis basis) implements Limit {

    /** Refuses a range without a bound, and an operating limit that is not stricter than the critical limit. */
    public RangeLimit {
        if (minimum.isEmpty() && maximum.isEmpty()) {
            throw new IllegalArgumentException("The limit " + id + " has neither a minimum nor a maximum.");
        }
        if (operating.isPresent()) {
            Optional<Bound> critical = operating.get().minimum() ? minimum : maximum;
            if (critical.isEmpty() || !operating.get().stricterThan(critical.get())) {
                throw new IllegalArgumentException("The operating limit " + operating.get().words() + " of " + id
                        + " is not stricter than the critical limit " + critical.map(Bound::words).orElse("(there is none on that side)") + ".");
            }
        }
    }

    /** A range without an operating limit. */
    public RangeLimit(String id, Optional<Bound> minimum, Optional<Bound> maximum, Basis basis) {
        this(id, minimum, maximum, Optional.empty(), basis);
    }

    /** The same range with an operating limit; refuses one that is not stricter. */
    public RangeLimit operatingAt(Bound bound) {
        return new RangeLimit(id, minimum, maximum, Optional.of(bound), basis);
    }

    /** Whether a reading is within the critical limit and past the operating one, so that the process asks for an adjustment. */
    public boolean asksForAdjustment(Temperature reading) {
        return judge(reading) == Verdict.WITHIN && operating.map(bound -> !bound.meets(reading)).orElse(false);
    }

    /** Within when the reading meets both bounds, breached otherwise. */
    public Verdict judge(Temperature reading) {
        boolean met = minimum.map(bound -> bound.meets(reading)).orElse(true)
                && maximum.map(bound -> bound.meets(reading)).orElse(true);
        return met ? Verdict.WITHIN : Verdict.BREACHED;
    }

    @Override
    public RangeLimit adopted() {
        return new RangeLimit(id, minimum, maximum, operating, basis.adoptedByOwner());
    }

    @Override
    public RangeLimit with(LimitOverride override) {
        Basis own = override.basis();
        switch (override.path()) {
            case "minimum":
                return new RangeLimit(id, minimum.map(b -> override.replace(b)), maximum, operating, own);
            case "maximum":
                return new RangeLimit(id, minimum, maximum.map(b -> override.replace(b)), operating, own);
            default:
                throw override.unknownPath();
        }
    }

    /** Both bounds in words. */
    public String words() {
        String low = minimum.map(Bound::words).orElse("");
        String high = maximum.map(Bound::words).orElse("");
        return low.isEmpty() ? high : high.isEmpty() ? low : Words.say("j_both", low, high);
    }
}
