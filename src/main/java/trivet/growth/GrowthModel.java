package trivet.growth;

import java.util.List;
import java.util.Set;

/**
 * One published growth model: the organism, what it was measured in, its curve, and what else it needs.
 *
 * @param lag q0 of Baranyi and Roberts, 1/(e^h0 − 1); NaN where none is published, so that growth begins at once (fail-safe)
 * @param maxLog the highest log10 count; 8 where none is published
 * @param spreadLog the spread to be shown beside a result, log10: half-width of what strains and replicates differ by
 * @param needs what must be given: {@code ph}, {@code water_activity}, {@code salt_percent}
 */
public record GrowthModel(String id, String organism, String matrix, double lowestMeasured, double highestMeasured, double lag, double maxLog,
        double spreadLog, Set<String> needs, String source, CurveAt curve) {

    /** The curve for given circumstances. */
    interface CurveAt {
        RateCurve of(Conditions conditions);
    }

    /** Circumstances of the food; NaN where not given. */
    public record Conditions(double ph, double waterActivity, double saltPercent) {

        /** Nothing known. */
        public static final Conditions NONE = new Conditions(Double.NaN, Double.NaN, Double.NaN);
    }

    private static final double LN10 = Math.log(10);
    private static final double NO_LAG = Double.NaN;
    private static final double USUAL_MAX = 8;
    private static final String JUNEJA_2011 = "Juneja, Marks, Huang and Thippareddi, Food Microbiol. 28 (2011), rates read as log10 per hour";

    /** The models that are offered, in the order in which they are listed. */
    public static final List<GrowthModel> ALL = List.of(
            new GrowthModel("b-cereus-cooked-rice", "Bacillus cereus", "cooked rice, cooling", 10, 49, 1 / Math.expm1(4.1), 8.03, 1, Set.of(),
                    "Juneja, Golden, Mishra, Harrison, Mohr and Silverman, Int. J. Food Microbiol. 290 (2019); lag and maximum from the agency's published prediction",
                    c -> new RateCurve.Ratkowsky(0.0046, 8.67, 0.0656, 49.68)),
            new GrowthModel("c-perfringens-chicken", "Clostridium perfringens", "cooked uncured chicken", 10, 51, 0.0105, USUAL_MAX, 1, Set.of(), JUNEJA_2011,
                    c -> new RateCurve.Ratkowsky(0.048 * 0.048 * LN10, 9.74, 0.208, 52.1)),
            new GrowthModel("c-perfringens-beef", "Clostridium perfringens", "cooked uncured beef", 10, 51, 0.0699, USUAL_MAX, 1, Set.of(), JUNEJA_2011,
                    c -> new RateCurve.Ratkowsky(0.05 * 0.05 * LN10, 10.15, 0.238, 53)),
            new GrowthModel("c-perfringens-bulk-meat", "Clostridium perfringens", "bulk meat, by pH and salt; no lag, an upper bound", 15, 52, NO_LAG, USUAL_MAX, 1,
                    Set.of("ph", "salt_percent"), "Le Marc, Plowman, Aldus, Munoz-Cuevas, Baranyi and Peck, Int. J. Food Microbiol. 128 (2008), pp. 41-50", GrowthModel::bulkMeat),
            new GrowthModel("salmonella-egg-mix", "Salmonella", "scrambled egg mix; if it came in after the bake", 10, 45, NO_LAG, USUAL_MAX, 0.5, Set.of(),
                    "Li et al., Food Microbiol. 64 (2017)", c -> new RateCurve.Ratkowsky(0.00136, 2.62, 0.436, 45.8)),
            new GrowthModel("s-aureus-broth", "Staphylococcus aureus", "broth; if it came in after the bake", 8, 50, NO_LAG, USUAL_MAX, 0.5, Set.of(),
                    "Medvedova et al. (2019), PMC6912147", c -> new RateCurve.Cardinal(1.97, 7.7, 40.6, 46.7)),
            new GrowthModel("l-monocytogenes-rte", "Listeria monocytogenes", "ready-to-eat food; growth rate only", -2.83, 25, NO_LAG, USUAL_MAX, 0.5, Set.of("ph", "water_activity"),
                    "Mejlholm and Dalgaard, J. Food Prot. 72 (2009), pp. 2132-2143; Mejlholm et al., Int. J. Food Microbiol. 141 (2010), pp. 137-150", GrowthModel::readyToEat),
            new GrowthModel("l-monocytogenes-dairy", "Listeria monocytogenes", "dairy; a cross-check", -1.7, 45, NO_LAG, USUAL_MAX, 0.5, Set.of("ph", "water_activity"),
                    "Augustin et al. (2005) as given in Mejlholm et al., Int. J. Food Microbiol. 141 (2010), pp. 137-150", GrowthModel::dairy),
            new GrowthModel("b-cereus-milk", "Bacillus cereus, cold-growing", "milk; a flag for the cold end", 0, 45, NO_LAG, USUAL_MAX, 1, Set.of("ph", "water_activity"),
                    "Zwietering, de Wit and Notermans, Int. J. Food Microbiol. 30 (1996), pp. 55-70", GrowthModel::milk));

    /** The model of an id; refuses one that is not there. */
    public static GrowthModel of(String id) {
        return ALL.stream().filter(model -> model.id().equals(id)).findFirst()
                .orElseThrow(() -> new IllegalArgumentException("There is no growth model \"" + id + "\". GET /api/calc/growth/models lists them."));
    }

    private static double inside(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException("This model was measured for " + name + " from " + low + " to " + high + "; " + value + " lies outside.");
        }
        return value;
    }

    private static RateCurve bulkMeat(Conditions c) {
        double salt = inside("salt in water, per cent,", c.saltPercent(), 0.5, 4);
        double ph = inside("pH", c.ph(), 5, 6.25);
        double aw = 1 - salt * (5.2471 + 0.12206 * salt) / 1000;
        return new RateCurve.Ratkowsky(7.45 * (aw - 0.9755) * (2 - aw - 0.9755) * (ph - 4.76), 12.20, 0.095, 54.47);
    }

    private static RateCurve readyToEat(Conditions c) {
        double ph = inside("pH", c.ph(), 0, 14);
        double aw = inside("water activity", c.waterActivity(), 0, 1);
        double water = Math.max(0, (aw - 0.923) / 0.077);
        double acid = Math.max(0, 1 - Math.pow(10, 4.97 - ph));
        return new ListeriaReadyToEat(0.419 / (27.83 * 27.83) * water * acid, water, acid);
    }

    private static RateCurve dairy(Conditions c) {
        double ph = inside("pH", c.ph(), 0, 14);
        double aw = inside("water activity", c.waterActivity(), 0, 1);
        double acid = ph <= 4.71 || ph >= 9.61 ? 0 : (ph - 4.71) * (ph - 9.61) / ((ph - 4.71) * (ph - 9.61) - (ph - 7.1) * (ph - 7.1));
        double water = aw <= 0.913 ? 0 : Math.min(1, (aw - 0.913) / (0.997 - 0.913));
        return new RateCurve.Cardinal(0.742 * acid * water, -1.72, 37, 45.5);
    }

    private static RateCurve milk(Conditions c) {
        double ph = inside("pH", c.ph(), 0, 14);
        double aw = inside("water activity", c.waterActivity(), 0, 1);
        double acid = Math.max(0, (ph - 4.9) * (2 * 6.5 - 4.9 - ph) / (1.6 * 1.6));
        double water = Math.max(0, (aw - 0.95) / 0.05);
        return new RateCurve.SquareRoot(2 / (37.0 * 37.0) * acid * water, 0, 45);
    }
}
