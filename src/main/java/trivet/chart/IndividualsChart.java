package trivet.chart;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntPredicate;

/**
 * A chart of single values and their moving ranges of two (W. A. Shewhart; NIST/SEMATECH e-Handbook 6.3.2.2): limits at
 * x̄ ± 3 MR̄/d2, upper limit of the moving range D4 MR̄. Run rules after L. S. Nelson, J. Qual. Technol. 16 (1984), pp. 237-239 from memory, numbering
 * from memory. Control limits describe the process and are never food-safety limits.
 *
 * @param sigma MR̄/d2
 */
public record IndividualsChart(double centre, double upper, double lower, double sigma, double movingRangeMean, double movingRangeUpper, List<Signal> signals) {

    /** d2 for ranges of two, exactly 2/√π. */
    public static final double D2 = 2 / Math.sqrt(Math.PI);
    private static final double D3 = 0.8525024664;
    /** The printed pair of tables: d2 1.128 goes with D4 3.267. */
    private static final double TABLE_D2 = 1.128;
    private static final double TABLE_D4 = 3.267;
    /** The rules that are used unless others are named. */
    public static final List<String> USUAL = List.of("beyond-limit", "nine-one-side", "six-trending");
    /** Every rule. */
    public static final List<String> RULES = List.of("beyond-limit", "nine-one-side", "six-trending", "fourteen-alternating", "two-of-three-beyond-two-sigma",
            "four-of-five-beyond-one-sigma", "fifteen-within-one-sigma", "eight-outside-one-sigma");

    /**
     * The chart of values in order; refuses fewer than two.
     *
     * @param breaks indexes, counted from 0, before which no moving range is built and over which no run goes on: a gap, another probe,
     *     a new plan version
     */
    public static IndividualsChart of(double[] values, double d2, Set<String> rules, Set<Integer> breaks) {
        if (values.length < 2) {
            throw new IllegalArgumentException("A chart needs at least two values.");
        }
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        double ranges = 0;
        int count = 0;
        for (int i = 1; i < values.length; i++) {
            if (!breaks.contains(i)) {
                ranges += Math.abs(values[i] - values[i - 1]);
                count++;
            }
        }
        double centre = sum / values.length;
        double mean = count == 0 ? 0 : ranges / count;
        double sigma = mean / d2;
        double d4 = d2 == TABLE_D2 ? TABLE_D4 : 1 + 3 * D3 / d2;
        return new IndividualsChart(centre, centre + 3 * sigma, centre - 3 * sigma, sigma, mean, d4 * mean, signals(values, centre, sigma, rules, breaks));
    }

    private static List<Signal> signals(double[] x, double centre, double sigma, Set<String> rules, Set<Integer> breaks) {
        Set<Signal> found = new LinkedHashSet<>();
        for (String rule : RULES) {
            if (rules.contains(rule)) {
                found.addAll(Stretches.signals(x, breaks, stretch -> {
                    Set<Signal> within = new LinkedHashSet<>();
                    find(rule, stretch, centre, sigma, within);
                    return within;
                }));
            }
        }
        return new ArrayList<>(found);
    }

    private static void find(String rule, double[] x, double c, double s, Set<Signal> found) {
        switch (rule) {
            case "beyond-limit" -> each(rule, x.length, 1, i -> Math.abs(x[i] - c) > 3 * s, found);
            case "nine-one-side" -> {
                run(rule, x.length, 9, i -> x[i] > c, found);
                run(rule, x.length, 9, i -> x[i] < c, found);
            }
            case "six-trending" -> {
                run(rule, x.length, 5, i -> i > 0 && x[i] > x[i - 1], found);
                run(rule, x.length, 5, i -> i > 0 && x[i] < x[i - 1], found);
            }
            case "fourteen-alternating" -> run(rule, x.length, 12, i -> i > 1 && (x[i] - x[i - 1]) * (x[i - 1] - x[i - 2]) < 0, found);
            case "two-of-three-beyond-two-sigma" -> {
                windows(rule, x.length, 3, 2, i -> x[i] > c + 2 * s, found);
                windows(rule, x.length, 3, 2, i -> x[i] < c - 2 * s, found);
            }
            case "four-of-five-beyond-one-sigma" -> {
                windows(rule, x.length, 5, 4, i -> x[i] > c + s, found);
                windows(rule, x.length, 5, 4, i -> x[i] < c - s, found);
            }
            case "fifteen-within-one-sigma" -> run(rule, x.length, 15, i -> Math.abs(x[i] - c) < s, found);
            default -> run(rule, x.length, 8, i -> Math.abs(x[i] - c) > s, found);
        }
    }

    private static void each(String rule, int n, int ignored, IntPredicate is, Set<Signal> found) {
        for (int i = 0; i < n; i++) {
            if (is.test(i)) {
                found.add(new Signal(rule, i + 1));
            }
        }
    }

    /** A run of so many is one signal, completed by the last of them; a longer run stays the same signal. */
    private static void run(String rule, int n, int length, IntPredicate is, Set<Signal> found) {
        int run = 0;
        for (int i = 0; i < n; i++) {
            run = is.test(i) ? run + 1 : 0;
            if (run == length) {
                found.add(new Signal(rule, i + 1));
            }
        }
    }

    private static void windows(String rule, int n, int width, int needed, IntPredicate is, Set<Signal> found) {
        for (int i = 0; i < n; i++) {
            int count = 0;
            for (int k = Math.max(0, i - width + 1); k <= i; k++) {
                count += is.test(k) ? 1 : 0;
            }
            if (is.test(i) && count >= needed) {
                found.add(new Signal(rule, i + 1));
            }
        }
    }

    /** The capability Cpk against one or two specification limits, NaN for the one that is not there. */
    public static double capability(double mean, double sigma, double lowerLimit, double upperLimit) {
        double up = Double.isNaN(upperLimit) ? Double.POSITIVE_INFINITY : (upperLimit - mean) / (3 * sigma);
        double down = Double.isNaN(lowerLimit) ? Double.POSITIVE_INFINITY : (mean - lowerLimit) / (3 * sigma);
        return Math.min(up, down);
    }
}
