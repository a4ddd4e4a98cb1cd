package trivet.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * Exponentially weighted moving average z_i = λ x_i + (1 − λ) z_(i−1), z_0 the target (S. W. Roberts, Technometrics 1, 1959;
 * NIST/SEMATECH e-Handbook 6.3.2.4), limits target ± L s √(λ/(2 − λ) [1 − (1 − λ)^2i]), the bracket 1 for asymptotic ones.
 */
public record EwmaChart(double[] points, double[] upper, double[] lower, List<Signal> signals) {

    /** The chart; refuses a λ outside ]0, 1] and an s or L that is not above 0. */
    public static EwmaChart of(double[] values, double lambda, double target, double sd, double width, boolean exact) {
        if (!(lambda > 0 && lambda <= 1) || !(sd > 0) || !(width > 0)) {
            throw new IllegalArgumentException("lambda lies above 0 and up to 1; sd and width are above 0.");
        }
        int n = values.length;
        double[] points = new double[n];
        double[] upper = new double[n];
        double[] lower = new double[n];
        List<Signal> signals = new ArrayList<>();
        double z = target;
        double left = 1;
        for (int i = 0; i < n; i++) {
            z = lambda * values[i] + (1 - lambda) * z;
            left *= (1 - lambda) * (1 - lambda);
            double half = width * sd * Math.sqrt(lambda / (2 - lambda) * (exact ? 1 - left : 1));
            points[i] = z;
            upper[i] = target + half;
            lower[i] = target - half;
            if (z > upper[i] || z < lower[i]) {
                signals.add(new Signal("beyond-limit", i + 1));
            }
        }
        return new EwmaChart(points, upper, lower, signals);
    }
}
