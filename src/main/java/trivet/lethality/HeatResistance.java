package trivet.lethality;

import java.util.List;

/**
 * How much heat an organism stands in a matrix: D, the minutes at a temperature for one log10 reduction, and z. Used only
 * between the temperatures at which it was measured; outside them it is refused and never extrapolated.
 *
 * @param dMinutes D at {@code atCelsius}
 * @param lowest the lowest temperature measured, °C, inclusive
 * @param highest the highest temperature measured, °C, inclusive
 */
public record HeatResistance(String organism, String matrix, double dMinutes, double atCelsius, double z, double lowest, double highest, String source) {

    /** The sets that are shown. Salt or a low water activity raises D many times over. */
    public static final List<HeatResistance> KNOWN = List.of(
            new HeatResistance("Salmonella (5 strains)", "liquid egg yolk, pH 6.3", 0.28, 60, 4.33, 60, 62.2, "Schuman and Sheldon, J. Food Prot. 60(6), 1997, pp. 634-638"),
            new HeatResistance("L. monocytogenes (5 strains)", "liquid egg yolk", 1.34, 60, 6.06, 60, 62.2, "Schuman and Sheldon, J. Food Prot. 60(6), 1997, pp. 634-638"),
            new HeatResistance("Salmonella (5 strains)", "egg white, pH 8.2", 7.99, 55.1, 3.54, 55.1, 58.3, "Schuman and Sheldon, J. Food Prot. 60(6), 1997, pp. 634-638"),
            new HeatResistance("L. monocytogenes F5069", "raw liquid whole egg", 22.6, 51, 7.2, 51, 66, "Foegeding and Leasor, J. Food Prot. 53, 1990, pp. 9-14"),
            new HeatResistance("Salmonella cocktail", "fried chicken and beef patties", 16, 60, 6.0, 55, 70, "review text, secondary source"));

    /** D at a temperature, minutes; refuses one outside the measured range. */
    public double dAt(double celsius) {
        if (!(celsius >= lowest && celsius <= highest)) {
            throw new IllegalArgumentException(organism + " in " + matrix + " was measured from " + lowest + " to " + highest + " °C; " + celsius + " °C lies outside.");
        }
        return dMinutes * Math.pow(10, (atCelsius - celsius) / z);
    }

    /** log10 reductions of so many minutes at a temperature within the measured range. */
    public double reductions(double minutes, double celsius) {
        return minutes / dAt(celsius);
    }

    /**
     * log10 reductions over a core curve: nothing counts below the lowest temperature measured, and whatever is hotter than the
     * highest counts as that, so that nothing is extrapolated.
     */
    public double reductions(double[] minutes, double[] celsius) {
        Lethality.Settings settings = new Lethality.Settings(atCelsius, z, Lethality.Rule.LOG_MEAN, false, Double.POSITIVE_INFINITY, lowest, highest);
        return new Lethality(settings).total(minutes, celsius) / dMinutes;
    }

    /** z from D at two temperatures, °C. */
    public static double z(double celsius1, double d1, double celsius2, double d2) {
        return (celsius2 - celsius1) / Math.log10(d1 / d2);
    }
}
