package trivet.study;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import trivet.form.As;
import trivet.form.Kind;
import trivet.knowledge.Ingredient;
import trivet.knowledge.Knowledge;

/**
 * The recipe of a product: what goes in, in grams, and what comes out.
 *
 * @param pieces how many pieces one mix gives
 * @param pieceGrams the weight of a piece as sold
 * @param lossPercent what baking and handling lose of the weight of the mix
 */
public record Recipe(@As(Kind.WHOLE) String pieces, @As(Kind.NUMBER) String pieceGrams, @As(Kind.NUMBER) String lossPercent, List<Item> items) {

    /** Copies the list. */
    public Recipe {
        items = List.copyOf(items);
    }

    /**
     * One ingredient.
     *
     * @param kind the ingredient in the knowledge base
     * @param part the part of the product it goes into, such as pastry or filling; baker's per cent count within a part
     * @param specification the supplier's specification, the source of what it contains
     * @param contains allergenic substances by that specification, beside what the food itself is
     * @param mayContain substances that the specification does not rule out
     */
    public record Item(@As(Kind.ID) String id, @As(Kind.NAME) String kind, String title, String part, @As(Kind.NUMBER) String grams, String supplier, String specification, @As(Kind.DATE) String specificationDate,
            @As(Kind.NAME) List<String> contains, @As(Kind.NAME) List<String> mayContain) {

        /** Copies the lists. */
        public Item {
            contains = List.copyOf(contains);
            mayContain = List.copyOf(mayContain);
        }

        /** Its weight in grams; zero where none is given. */
        public BigDecimal weight() {
            return Kind.number(grams);
        }
    }

    /** An ingredient by its id. */
    public Optional<Item> item(String id) {
        return items.stream().filter(item -> item.id().equals(id)).findFirst();
    }

    /** The weight of the whole mix, g. */
    public BigDecimal total() {
        return items.stream().map(Item::weight).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** The flour of a part, g. */
    public BigDecimal flour(String part, Knowledge knowledge) {
        return items.stream().filter(item -> item.part().equals(part) && knowledge.ingredient(item.kind()).map(Ingredient::isFlour).orElse(false)).map(Item::weight).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** Baker's per cent: the weight as a percentage of the flour of its part, one decimal, half-even; empty where the part has no flour. */
    public Optional<BigDecimal> bakersPercent(Item item, Knowledge knowledge) {
        BigDecimal flour = flour(item.part(), knowledge);
        return flour.signum() == 0 ? Optional.empty() : Optional.of(item.weight().multiply(BigDecimal.valueOf(100)).divide(flour, 1, RoundingMode.HALF_EVEN));
    }

    /** The share of the whole mix in per cent, one decimal, half-even; empty for a mix without weight. */
    public Optional<BigDecimal> share(Item item) {
        return total().signum() == 0 ? Optional.empty() : Optional.of(item.weight().multiply(BigDecimal.valueOf(100)).divide(total(), 1, RoundingMode.HALF_EVEN));
    }

    /** What one mix weighs when it is sold, g: the mix less its loss. */
    public BigDecimal sold() {
        return total().multiply(BigDecimal.valueOf(100).subtract(Kind.number(lossPercent))).divide(BigDecimal.valueOf(100), MathContext.DECIMAL64);
    }

    /** How many whole pieces one mix gives by weight; empty where no weight of a piece is given. */
    public Optional<Integer> piecesByWeight() {
        BigDecimal piece = Kind.number(pieceGrams);
        return piece.signum() == 0 ? Optional.empty() : Optional.of(sold().divide(piece, 0, RoundingMode.FLOOR).intValue());
    }

    /** The grams of each ingredient for another number of pieces, one decimal, half-even; empty where the recipe does not say how many it gives. */
    public Map<String, BigDecimal> forPieces(int wanted) {
        Map<String, BigDecimal> scaled = new LinkedHashMap<>();
        BigDecimal gives = Kind.number(pieces);
        if (gives.signum() > 0) {
            items.forEach(item -> scaled.put(item.id(), item.weight().multiply(BigDecimal.valueOf(wanted)).divide(gives, 1, RoundingMode.HALF_EVEN)));
        }
        return scaled;
    }

    /** The allergenic substances that the product contains: what each ingredient is, and what its specification adds. */
    public Set<String> contains(Knowledge knowledge) {
        Set<String> all = new TreeSet<>();
        items.forEach(item -> all.addAll(contains(item, knowledge)));
        return all;
    }

    /** The allergenic substances of one ingredient. */
    public static Set<String> contains(Item item, Knowledge knowledge) {
        Set<String> all = new TreeSet<>(item.contains());
        knowledge.ingredient(item.kind()).ifPresent(kind -> all.addAll(kind.contains()));
        return all;
    }

    /** The substances that the product may contain by a specification and does not contain anyway. */
    public Set<String> mayContain(Knowledge knowledge) {
        Set<String> all = new TreeSet<>();
        items.forEach(item -> all.addAll(item.mayContain()));
        all.removeAll(contains(knowledge));
        return all;
    }
}
