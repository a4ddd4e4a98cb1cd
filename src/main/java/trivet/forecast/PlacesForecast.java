package trivet.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import trivet.forecast.CoolingForecast.Arrival;
import trivet.forecast.CoolingForecast.Flag;
import trivet.forecast.CoolingForecast.Forecast;
import trivet.forecast.CoolingForecast.Prior;
import trivet.forecast.CoolingForecast.Target;

/**
 * A forecast of food that cools in one place after another: one fit over all of its readings. In each place k, from its minute
 * s<sub>k</sub> on, T(t) = a<sub>k</sub> + (T<sub>k</sub> − a<sub>k</sub>) e^(−(t − s<sub>k</sub>)/τ<sub>k</sub>), and the food enters the next place as warm
 * as it left the last (Newton's law of cooling by pieces). The unknowns are T<sub>0</sub> and each place's ln τ and air, °C; what is
 * known of the latter two beforehand is a further residual each (maximum a posteriori).
 *
 * <p>So what was measured on the bench still says how warm the food went into the chiller. It never passes or fails food.
 */
public final class PlacesForecast {

    private static final double WARMER_SIGMAS = 3;
    private static final double COLDER_SIGMAS = 4;

    private PlacesForecast() {
    }

    /**
     * A place that the food stands in.
     *
     * @param from the minute it was brought there; the first place's is the first minute of all
     * @param air what the air there is thought to be, °C
     * @param airSd the standard deviation of that
     */
    public record Place(double from, double air, double airSd, Prior prior) {
    }

    /** The temperature at a minute and its derivatives by every unknown. */
    private static final class Curve {
        private final List<Place> places;
        private final double[] x;
        private final double[][] gradients;
        private final double[] entering;

        Curve(List<Place> places, double[] x) {
            this.places = places;
            this.x = x;
            this.gradients = new double[places.size()][x.length];
            this.entering = new double[places.size()];
            entering[0] = x[0];
            gradients[0][0] = 1;
            for (int k = 1; k < places.size(); k++) {
                entering[k] = at(places.get(k).from(), k - 1, gradients[k]);
            }
        }

        int place(double minute) {
            int k = 0;
            while (k + 1 < places.size() && places.get(k + 1).from() < minute) {
                k++;
            }
            return k;
        }

        double at(double minute, int k, double[] gradient) {
            double tau = Math.exp(x[1 + 2 * k]);
            double air = x[2 + 2 * k];
            double since = minute - places.get(k).from();
            double e = Math.exp(-since / tau);
            for (int i = 0; i < gradient.length; i++) {
                gradient[i] = gradients[k][i] * e;
            }
            gradient[1 + 2 * k] += (entering[k] - air) * e * since / tau;
            gradient[2 + 2 * k] += 1 - e;
            return air + (entering[k] - air) * e;
        }
    }

    /**
     * The forecast: T0 at the first place, τ and air of the last one; minutes ascending, at least one reading.
     *
     * @param sigma the repeatability of a reading, °C
     */
    public static Forecast of(List<Place> places, double sigma, double level, List<Target> targets, double[] minutes, double[] celsius) {
        int p = 1 + 2 * places.size();
        double[] start = new double[p];
        start[0] = Arrays.stream(celsius).max().orElseThrow(() -> new IllegalArgumentException("A forecast needs a reading."));
        for (int k = 0; k < places.size(); k++) {
            start[1 + 2 * k] = places.get(k).prior().lnTauMean();
            start[2 + 2 * k] = places.get(k).air();
        }
        LeastSquares.Fit fit = LeastSquares.fit((x, r, j) -> residuals(places, sigma, minutes, celsius, x, r, j), minutes.length + p - 1, start);
        Curve curve = new Curve(places, fit.parameters());
        List<Arrival> arrivals = new ArrayList<>();
        for (Target target : targets) {
            arrivals.add(arrival(curve, target, fit.covariance(), level));
        }
        List<Flag> flags = new ArrayList<>();
        for (int i = 0; i < minutes.length; i++) {
            double off = celsius[i] - curve.at(minutes[i], curve.place(minutes[i]), new double[p]);
            if (off > WARMER_SIGMAS * sigma || off < -COLDER_SIGMAS * sigma) {
                flags.add(CoolingForecast.flag(i + 1, off > 0));
            }
        }
        return new Forecast(fit.parameters()[0], Math.exp(fit.parameters()[p - 2]), fit.parameters()[p - 1], arrivals, flags);
    }

    private static void residuals(List<Place> places, double sigma, double[] minutes, double[] celsius, double[] x, double[] r, double[][] j) {
        Curve curve = new Curve(places, x);
        int n = minutes.length;
        for (int i = 0; i < n; i++) {
            r[i] = (curve.at(minutes[i], curve.place(minutes[i]), j[i]) - celsius[i]) / sigma;
            for (int c = 0; c < x.length; c++) {
                j[i][c] /= sigma;
            }
        }
        for (int k = 0; k < places.size(); k++) {
            Place place = places.get(k);
            prior(r, j, n + 2 * k, 1 + 2 * k, x[1 + 2 * k], place.prior().lnTauMean(), place.prior().lnTauSd());
            prior(r, j, n + 2 * k + 1, 2 + 2 * k, x[2 + 2 * k], place.air(), place.airSd());
        }
    }

    private static void prior(double[] r, double[][] j, int row, int unknown, double value, double mean, double sd) {
        Arrays.fill(j[row], 0);
        r[row] = (value - mean) / sd;
        j[row][unknown] = 1 / sd;
    }

    /** The arrival in the place that the curve is in by then; minutes count from 0, and the interval is symmetric in their logarithm. */
    private static Arrival arrival(Curve curve, Target target, double[][] covariance, double level) {
        int last = curve.places.size() - 1;
        int k = 0;
        while (k < last && curve.entering[k + 1] > target.celsius()) {
            k++;
        }
        double tau = Math.exp(curve.x[1 + 2 * k]);
        double air = curve.x[2 + 2 * k];
        double above = curve.entering[k] - air;
        double left = target.celsius() - air;
        if (!(above > 0 && left > 0)) {
            return CoolingForecast.never(target, above);
        }
        double eta = curve.places.get(k).from() + tau * Math.log(above / left);
        double[] gradient = new double[curve.x.length];
        double slope = -left / tau;
        curve.at(eta, k, gradient);
        double square = 0;
        for (int a = 0; a < gradient.length; a++) {
            for (int b = 0; b < gradient.length; b++) {
                square += gradient[a] * covariance[a][b] * gradient[b];
            }
        }
        double se = Math.sqrt(square) / -slope;
        return CoolingForecast.interval(target, eta, se, level, 0);
    }
}
