package trivet.limit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Time that food may stand out of temperature control, as bands of minutes and what may still be done in each. */
public record TimeOutLimit(String id, List<Band> bands, Basis basis) implements Limit {

    /** Copies the bands and refuses an empty list. */
    public TimeOutLimit {
        bands = List.copyOf(bands);
        if (bands.isEmpty()) {
            throw new IllegalArgumentException("The limit " + id + " has no bands.");
        }
    }

    /**
     * One band.
     *
     * @param minutes the time out of control up to which the band holds
     * @param inclusive whether exactly that time is still in the band
     * @param notAbove the temperature that the food must not pass meanwhile, where the rule gives one
     * @param then what may be done with the food up to that time
     */
    public record Band(BigDecimal minutes, boolean inclusive, Optional<Bound> notAbove, String then) {
    }

    /** The first band that a time falls in; empty when it is past them all, and the food is to be thrown away. */
    public Optional<Band> bandAt(BigDecimal minutesOut) {
        return bands.stream().filter(band -> {
            int side = minutesOut.compareTo(band.minutes());
            return side < 0 || (side == 0 && band.inclusive());
        }).findFirst();
    }

    @Override
    public TimeOutLimit adopted() {
        return new TimeOutLimit(id, bands, basis.adoptedByOwner());
    }

    @Override
    public TimeOutLimit with(LimitOverride override) {
        int index = override.index("bands", bands.size());
        if (!override.path().endsWith(".minutes")) {
            throw override.unknownPath();
        }
        Band band = bands.get(index);
        List<Band> changed = new ArrayList<>(bands);
        changed.set(index, new Band(override.minutes(), band.inclusive(), band.notAbove(), band.then()));
        return new TimeOutLimit(id, changed, override.basis());
    }
}
