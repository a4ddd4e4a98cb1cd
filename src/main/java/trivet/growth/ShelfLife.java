package trivet.growth;

import java.time.LocalDate;

/**
 * Shelf life: days until so many log10 of growth at one temperature without a lag, sampling plans, and use-by dates. A number
 * here is no proof; a life needs a study or a competent person (Reg. (EC) 2073/2005 Annex II).
 */
public final class ShelfLife {

    private static final double LN10 = Math.log(10);

    private ShelfLife() {
    }

    /** Days until a growth at a rate of 1/h, natural logarithm; NaN when nothing grows. */
    public static double days(double ratePerHour, double growthLog) {
        return ratePerHour > 0 ? growthLog * LN10 / ratePerHour / 24 : Double.NaN;
    }

    /**
     * Whether a food cannot support L. monocytogenes by the categories of Reg. (EC) 2073/2005 Annex I note 8: pH ≤ 4.4, or water
     * activity ≤ 0.92, or pH ≤ 5.0 with water activity ≤ 0.94, or a life of less than 5 days. From memory.
     */
    public static boolean cannotSupportListeria(double ph, double waterActivity, double lifeDays) {
        return ph <= 4.4 || waterActivity <= 0.92 || (ph <= 5.0 && waterActivity <= 0.94) || lifeDays < 5;
    }

    /** The probability that n samples with at most c failing are accepted when a share p of units fails (binomial). */
    public static double acceptance(int n, int c, double p) {
        double term = Math.pow(1 - p, n);
        double sum = term;
        for (int k = 1; k <= c; k++) {
            term = binomial(n, k) * Math.pow(p, k) * Math.pow(1 - p, n - k);
            sum += term;
        }
        return sum;
    }

    /** The probability of acceptance of a three-class plan: none above M, at most c between m and M. */
    public static double acceptance(int n, int c, double between, double above) {
        double sum = 0;
        for (int k = 0; k <= c; k++) {
            sum += binomial(n, k) * Math.pow(between, k) * Math.pow(1 - between - above, n - k);
        }
        return sum;
    }

    /** The fewest samples that find at least one failing with a probability, when a share p fails. */
    public static int samplesToDetect(double probability, double p) {
        return (int) Math.ceil(Math.log1p(-probability) / Math.log1p(-p) - 1e-9);
    }

    /** The one-sided 95 % upper bound of the failing share when none of n failed. */
    public static double upperBoundNoneOf(int n) {
        return 1 - Math.pow(0.05, 1.0 / n);
    }

    private static double binomial(int n, int k) {
        double value = 1;
        for (int i = 1; i <= k; i++) {
            value *= (n - k + i) / (double) i;
        }
        return value;
    }

    /** The last day of use, valid to its end at the site: day 0 is the business day on which the cooling was completed. */
    public static LocalDate useBy(LocalDate dayZero, int days) {
        return dayZero.plusDays(days);
    }

    /** The last day of use of food that was frozen and thawed: the lesser of what was left and the plan's days after thawing. */
    public static LocalDate useByThawed(LocalDate thawed, int daysLeftWhenFrozen, int daysAfterThawing) {
        return thawed.plusDays(Math.min(daysLeftWhenFrozen, daysAfterThawing));
    }
}
