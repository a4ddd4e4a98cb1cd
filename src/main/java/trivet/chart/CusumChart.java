package trivet.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * Tabular cumulative sums S⁺ = max(0, S⁺ + x − target − K), S⁻ = max(0, S⁻ + target − K − x) (E. S. Page, Biometrika 41, 1954;
 * NIST/SEMATECH e-Handbook 6.3.2.3); a signal when a sum first passes H; staying above is the same signal.
 */
public record CusumChart(double[] high, double[] low, List<Signal> signals) {

    /** The chart; refuses an allowance below 0 and a decision that is not above 0. */
    public static CusumChart of(double[] values, double target, double allowance, double decision) {
        if (!(allowance >= 0) || !(decision > 0)) {
            throw new IllegalArgumentException("allowance is not below 0, and decision is above 0.");
        }
        int n = values.length;
        double[] high = new double[n];
        double[] low = new double[n];
        List<Signal> signals = new ArrayList<>();
        double up = 0;
        double down = 0;
        for (int i = 0; i < n; i++) {
            double beforeUp = up;
            double beforeDown = down;
            up = Math.max(0, up + values[i] - target - allowance);
            down = Math.max(0, down + target - allowance - values[i]);
            high[i] = up;
            low[i] = down;
            if (up > decision && beforeUp <= decision) {
                signals.add(new Signal("high", i + 1));
            }
            if (down > decision && beforeDown <= decision) {
                signals.add(new Signal("low", i + 1));
            }
        }
        return new CusumChart(high, low, signals);
    }
}
