package trivet.forecast;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import trivet.words.Words;

/**
 * A forecast of food that cools in air of one temperature: T(t) = Ta + (T0 − Ta) e^(−t/τ), t and τ in minutes (Newton's law
 * of cooling), fitted to all readings at once with what is known beforehand of ln τ, and of the air, as further residuals
 * (maximum a posteriori). It says when a target will be reached, and how sure that is; it never passes or fails food.
 *
 * <p>η = τ ln((T0 − Ta)/(Tx − Ta)); its standard error by the delta method from the stacked Jacobian; the interval is symmetric
 * in ln η, so that it is always positive. Without a prior it is plain least squares with Student's t.
 */
public final class CoolingForecast {

    private static final double WARMER_SIGMAS = 3;
    private static final double COLDER_SIGMAS = 4;
    private static final double USUAL_TAU = 75;
    private static final NormalDistribution NORMAL = new NormalDistribution();
    private static final double USUAL_LEVEL = 0.95;
    private static final double USUAL_Z = NORMAL.inverseCumulativeProbability((1 + USUAL_LEVEL) / 2);

    private CoolingForecast() {
    }

    /** What is known of ln τ before the first reading: from the product's own accepted batches, or a recipe's default. */
    public record Prior(double lnTauMean, double lnTauSd) {
    }

    /** A temperature to be reached, and within how many minutes from minute 0; the minutes NaN for none. */
    public record Target(double celsius, double limitMinutes) {
    }

    /**
     * What to forecast from.
     *
     * @param airSd the standard deviation of the air's temperature, °C, when it is to be estimated too; NaN when it is known
     * @param sigma the repeatability of a reading, °C
     * @param level of the interval, between 0 and 1
     * @param prior null for plain least squares
     */
    public record Question(double air, double airSd, double sigma, double level, Prior prior, List<Target> targets, double[] minutes, double[] celsius) {
    }

    /** When a target is reached: NaN throughout when the air never lets it get there. */
    public record Arrival(double celsius, double etaMinutes, double se, double low, double high, double probabilityLate) {
    }

    /** A reading, counted from 1, that does not fit, and why. */
    public record Flag(int reading, String why) {
    }

    /** The fitted curve and what follows from it. */
    public record Forecast(double t0, double tauMinutes, double air, List<Arrival> arrivals, List<Flag> flags) {
    }

    /** The forecast; refuses too few readings and a known air on or above a target, with a sentence. */
    public static Forecast of(Question q) {
        boolean airFree = !Double.isNaN(q.airSd());
        int n = q.minutes().length;
        int p = airFree ? 3 : 2;
        if (q.prior() == null && n < Math.max(3, p + (airFree ? 0 : 1))) {
            throw new IllegalArgumentException(Words.say("j_without_a_prior_at_least_three"));
        }
        for (Target target : q.targets()) {
            if (!airFree && q.air() >= target.celsius()) {
                throw new IllegalArgumentException(Words.say("j_air_of_c_never_cools_food", q.air(), target.celsius()));
            }
        }
        LeastSquares.Fit fit = fit(q, airFree, p);
        double[] x = fit.parameters();
        double air = airFree ? x[2] : q.air();
        int freedom = n + (airFree ? 1 : 0) - p;
        boolean plain = q.prior() == null;
        double variance = plain ? fit.sumOfSquares() / Math.max(1, freedom) : 1;
        List<Arrival> arrivals = new ArrayList<>();
        for (Target target : q.targets()) {
            arrivals.add(arrival(q, target, x, air, fit.covariance(), variance, plain ? freedom : 0));
        }
        return new Forecast(x[0], Math.exp(x[1]), air, arrivals, flags(q, x, air));
    }

    private static LeastSquares.Fit fit(Question q, boolean airFree, int p) {
        int n = q.minutes().length;
        boolean prior = q.prior() != null;
        int rows = n + (prior ? 1 : 0) + (airFree ? 1 : 0);
        double[] start = new double[p];
        start[0] = q.celsius()[0];
        start[1] = prior ? q.prior().lnTauMean() : startLnTau(q);
        if (airFree) {
            start[2] = q.air();
        }
        double sigma = prior || airFree ? q.sigma() : 1;
        return LeastSquares.fit((x, r, j) -> {
            double tau = Math.exp(x[1]);
            double air = airFree ? x[2] : q.air();
            for (int i = 0; i < n; i++) {
                double t = q.minutes()[i];
                double e = Math.exp(-t / tau);
                r[i] = (air + (x[0] - air) * e - q.celsius()[i]) / sigma;
                j[i][0] = e / sigma;
                j[i][1] = (x[0] - air) * e * t / tau / sigma;
                if (airFree) {
                    j[i][2] = (1 - e) / sigma;
                }
            }
            int row = n;
            if (prior) {
                r[row] = (x[1] - q.prior().lnTauMean()) / q.prior().lnTauSd();
                j[row][0] = 0;
                j[row][1] = 1 / q.prior().lnTauSd();
                if (airFree) {
                    j[row][2] = 0;
                }
                row++;
            }
            if (airFree) {
                r[row] = (x[2] - q.air()) / q.airSd();
                j[row][0] = 0;
                j[row][1] = 0;
                j[row][2] = 1 / q.airSd();
            }
        }, rows, start);
    }

    /** A start for ln τ from the first and the last reading, where both lie above the air. */
    private static double startLnTau(Question q) {
        int last = q.minutes().length - 1;
        double fall = (q.celsius()[0] - q.air()) / (q.celsius()[last] - q.air());
        double minutes = q.minutes()[last] - q.minutes()[0];
        return fall > 1 && minutes > 0 ? Math.log(minutes / Math.log(fall)) : Math.log(USUAL_TAU);
    }

    private static Arrival arrival(Question q, Target target, double[] x, double air, double[][] covariance, double variance, int freedom) {
        double tau = Math.exp(x[1]);
        double above = x[0] - air;
        double left = target.celsius() - air;
        if (!(above > 0 && left > 0)) {
            return never(target, above);
        }
        double eta = tau * Math.log(above / left);
        double[] gradient = new double[x.length];
        gradient[0] = tau / above;
        gradient[1] = eta;
        if (x.length == 3) {
            gradient[2] = tau * (1 / left - 1 / above);
        }
        double square = 0;
        for (int i = 0; i < x.length; i++) {
            for (int k = 0; k < x.length; k++) {
                square += gradient[i] * covariance[i][k] * gradient[k];
            }
        }
        double se = Math.sqrt(square * variance);
        return interval(target, eta, se, q.level(), freedom);
    }

    /** The arrival with its interval, symmetric in the logarithm of its minutes, or in them when it lies before minute 0. */
    static Arrival interval(Target target, double eta, double se, double level, int freedom) {
        double z = freedom > 0 ? new TDistribution(freedom).inverseCumulativeProbability((1 + level) / 2) : level == USUAL_LEVEL ? USUAL_Z : NORMAL.inverseCumulativeProbability((1 + level) / 2);
        boolean limited = !Double.isNaN(target.limitMinutes());
        if (eta <= 0) {
            return new Arrival(target.celsius(), eta, se, eta - z * se, eta + z * se, limited ? tail((target.limitMinutes() - eta) / se, freedom) : Double.NaN);
        }
        double relative = se / eta;
        double late = limited ? tail((Math.log(target.limitMinutes()) - Math.log(eta)) / relative, freedom) : Double.NaN;
        return new Arrival(target.celsius(), eta, se, eta * Math.exp(-z * relative), eta * Math.exp(z * relative), late);
    }

    /** No arrival: the air never lets it get there, or it never was above. */
    static Arrival never(Target target, double above) {
        return new Arrival(target.celsius(), Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.isNaN(target.limitMinutes()) ? Double.NaN : above > 0 ? 1 : Double.NaN);
    }

    private static double tail(double value, int freedom) {
        return freedom > 0 ? new TDistribution(freedom).cumulativeProbability(-value) : NORMAL.cumulativeProbability(-value);
    }

    private static List<Flag> flags(Question q, double[] x, double air) {
        List<Flag> flags = new ArrayList<>();
        double tau = Math.exp(x[1]);
        for (int i = 0; i < q.minutes().length; i++) {
            double off = q.celsius()[i] - (air + (x[0] - air) * Math.exp(-q.minutes()[i] / tau));
            if (off > WARMER_SIGMAS * q.sigma() || off < -COLDER_SIGMAS * q.sigma()) {
                flags.add(flag(i + 1, off > 0));
            }
        }
        return flags;
    }

    static Flag flag(int reading, boolean warmer) {
        return new Flag(reading, warmer ? Words.say("j_warmer_than_the_curve_of_the") : Words.say("j_colder_than_the_curve_of_the"));
    }
}
