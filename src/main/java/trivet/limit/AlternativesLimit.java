package trivet.limit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import trivet.measure.Quantity;
import trivet.measure.Temperature;
import trivet.words.Words;

/**
 * Published pairs of temperature and hold, any one of which is enough; never interpolated between rows.
 *
 * @param withinMinutes the time within which the food must be brought there, where the rule gives one
 * @param operating an operating limit for the core, stricter than the coolest row: below it the process is adjusted, which is
 *     no deviation
 */
public record AlternativesLimit(String id, List<Row> rows, Optional<BigDecimal> withinMinutes, Optional<Bound> operating, Basis basis)
        implements Limit {

    /** Copies the rows, and refuses an empty list and an operating limit that is not stricter than the coolest row. */
    public AlternativesLimit {
        rows = List.copyOf(rows);
        if (rows.isEmpty()) {
            throw new IllegalArgumentException("The limit " + id + " has no rows.");
        }
        Bound coolest = rows.stream().map(Row::least).reduce((a, b) -> a.stricterThan(b) ? b : a).orElseThrow();
        if (operating.isPresent() && !(operating.get().minimum() && operating.get().stricterThan(coolest))) {
            throw new IllegalArgumentException("The operating limit " + operating.get().words() + " of " + id
                    + " is not stricter than the critical limit " + coolest.words() + ".");
        }
    }

    /** Rows without an operating limit. */
    public AlternativesLimit(String id, List<Row> rows, Optional<BigDecimal> withinMinutes, Basis basis) {
        this(id, rows, withinMinutes, Optional.empty(), basis);
    }

    /** The same rows with an operating limit; refuses one that is not stricter. */
    public AlternativesLimit operatingAt(Bound bound) {
        return new AlternativesLimit(id, rows, withinMinutes, Optional.of(bound), basis);
    }

    /**
     * One published row.
     *
     * @param food the kind of food the row is for; empty where the rule has no kinds
     * @param least the lowest temperature of the row, inclusive or exclusive as printed
     * @param seconds the shortest hold at it, inclusive; 0 for an instantaneous reading
     */
    public record Row(Optional<String> food, Bound least, BigDecimal seconds, Basis basis) {

        /** Whether a piece of this lowest temperature, held this long, meets the row. */
        public boolean meets(Temperature temperature, BigDecimal heldSeconds) {
            return least.meets(temperature) && heldSeconds.compareTo(seconds) >= 0;
        }

        /** The row in words, for example "at least 70 °C for 2 min". */
        public String words() {
            return seconds.signum() == 0 ? least.words() : Words.say("j_for", least.words(), Quantity.duration(seconds));
        }
    }

    /** The kinds of food that have rows of their own, in the order of the rulebook. */
    public Set<String> foods() {
        Set<String> foods = new LinkedHashSet<>();
        rows.forEach(row -> row.food().ifPresent(foods::add));
        return foods;
    }

    /**
     * The rows that a food must meet one of. Without a kind, or with one the rule does not name, these are the rows of
     * the strictest kind: the one whose least demanding row asks most, compared by temperature and then by hold.
     */
    public List<Row> rowsFor(Optional<String> food) {
        Set<String> foods = foods();
        if (foods.isEmpty()) {
            return rows;
        }
        String kind = food.filter(foods::contains).orElseGet(this::strictestFood);
        return rows.stream().filter(row -> row.food().map(kind::equals).orElse(true)).toList();
    }

    private String strictestFood() {
        String strictest = null;
        Row demand = null;
        for (String food : foods()) {
            Row easiest = null;
            for (Row row : rows) {
                if (row.food().map(food::equals).orElse(false) && (easiest == null || compare(row, easiest) < 0)) {
                    easiest = row;
                }
            }
            if (demand == null || compare(easiest, demand) > 0) {
                demand = easiest;
                strictest = food;
            }
        }
        return strictest;
    }

    private static int compare(Row left, Row right) {
        int byTemperature = left.least().celsius().compareTo(right.least().celsius());
        return byTemperature != 0 ? byTemperature : left.seconds().compareTo(right.seconds());
    }

    @Override
    public AlternativesLimit adopted() {
        return new AlternativesLimit(id, rows.stream()
                .map(row -> new Row(row.food(), row.least(), row.seconds(), row.basis().adoptedByOwner())).toList(),
                withinMinutes, operating, basis.adoptedByOwner());
    }

    @Override
    public AlternativesLimit with(LimitOverride override) {
        int index = override.index("rows", rows.size());
        List<Row> changed = new ArrayList<>(rows);
        Row row = rows.get(index);
        Basis own = override.basis();
        if (override.path().endsWith(".celsius")) {
            changed.set(index, new Row(row.food(), override.replace(row.least()), row.seconds(), own));
        } else if (override.path().endsWith(".seconds")) {
            changed.set(index, new Row(row.food(), row.least(), override.seconds(), own));
        } else {
            throw override.unknownPath();
        }
        return new AlternativesLimit(id, changed, withinMinutes, operating, basis.adoptedByOwner());
    }
}
