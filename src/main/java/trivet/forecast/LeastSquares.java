package trivet.forecast;

/**
 * Nonlinear least squares by Levenberg and Marquardt (K. Levenberg, Q. Appl. Math. 2, 1944, pp. 164-168; D. Marquardt, SIAM J. 11, 1963, pp. 431-441)
 * with Moré's scaling by column norms (LNM 630, 1978, pp. 105-116 from memory), solved by Householder QR of the damped Jacobian, for few parameters.
 */
public final class LeastSquares {

    private static final int MOST_STEPS = 500;
    private static final double RELATIVE = 1e-10;

    private LeastSquares() {
    }

    /** Residuals and their derivatives. */
    public interface Problem {
        /** Writes the residuals at the parameters, and their derivatives by row and parameter. */
        void at(double[] parameters, double[] residuals, double[][] jacobian);
    }

    /**
     * A fit.
     *
     * @param sumOfSquares of the residuals
     * @param covariance the inverse of JᵀJ at the solution, not scaled by the residuals' variance; NaN where singular
     */
    public record Fit(double[] parameters, double sumOfSquares, double[][] covariance, int steps) {
    }

    /** Minimises the sum of squares from a start; refuses a start at which the problem is not finite. */
    public static Fit fit(Problem problem, int rows, double[] start) {
        int n = start.length;
        double[] x = start.clone();
        double[] r = new double[rows];
        double[][] j = new double[rows][n];
        double[] trial = new double[n];
        double[] trialR = new double[rows];
        double[][] trialJ = new double[rows][n];
        double[] scale = new double[n];
        double[][] work = new double[rows + n][n];
        double[] right = new double[rows + n];
        problem.at(x, r, j);
        double sum = squares(r);
        if (!Double.isFinite(sum)) {
            throw new IllegalArgumentException("The fit cannot begin here.");
        }
        double damping = 1e-8;
        int step = 0;
        for (; step < MOST_STEPS; step++) {
            for (int c = 0; c < n; c++) {
                double norm = 0;
                for (int i = 0; i < rows; i++) {
                    norm += j[i][c] * j[i][c];
                }
                scale[c] = Math.max(scale[c], Math.sqrt(norm));
            }
            boolean improved = false;
            boolean settled = false;
            while (!improved && damping < 1e16) {
                double[] delta = solve(j, r, scale, damping, work, right);
                for (int c = 0; c < n; c++) {
                    trial[c] = x[c] - delta[c];
                }
                problem.at(trial, trialR, trialJ);
                double trialSum = squares(trialR);
                if (trialSum <= sum) {
                    settled = small(delta, trial);
                    double[] swapX = x;
                    x = trial;
                    trial = swapX;
                    double[] swapR = r;
                    r = trialR;
                    trialR = swapR;
                    double[][] swapJ = j;
                    j = trialJ;
                    trialJ = swapJ;
                    sum = trialSum;
                    damping = Math.max(damping / 10, 1e-20);
                    improved = true;
                } else {
                    if (small(delta, x)) {
                        settled = true;
                        break;
                    }
                    damping *= 10;
                }
            }
            if (settled || !improved) {
                break;
            }
        }
        return new Fit(x, sum, covariance(j), step);
    }

    private static boolean small(double[] delta, double[] x) {
        for (int c = 0; c < x.length; c++) {
            if (Math.abs(delta[c]) > RELATIVE * (Math.abs(x[c]) + 1e-30)) {
                return false;
            }
        }
        return true;
    }

    private static double squares(double[] r) {
        double sum = 0;
        for (double value : r) {
            sum += value * value;
        }
        return Double.isNaN(sum) ? Double.POSITIVE_INFINITY : sum;
    }

    /** The step of the damped problem by Householder QR of [J; √λ D]. */
    private static double[] solve(double[][] j, double[] r, double[] scale, double damping, double[][] a, double[] b) {
        int m = r.length;
        int n = scale.length;
        for (int i = 0; i < m; i++) {
            System.arraycopy(j[i], 0, a[i], 0, n);
            b[i] = r[i];
        }
        double root = Math.sqrt(damping);
        for (int i = 0; i < n; i++) {
            java.util.Arrays.fill(a[m + i], 0);
            a[m + i][i] = root * (scale[i] > 0 ? scale[i] : 1);
            b[m + i] = 0;
        }
        return triangular(a, b, m + n, n);
    }

    private static double[] triangular(double[][] a, double[] b, int m, int n) {
        for (int c = 0; c < n; c++) {
            double norm = 0;
            for (int i = c; i < m; i++) {
                norm += a[i][c] * a[i][c];
            }
            norm = Math.sqrt(norm);
            if (norm == 0) {
                continue;
            }
            double alpha = a[c][c] > 0 ? -norm : norm;
            double head = a[c][c] - alpha;
            double length = head * head;
            for (int i = c + 1; i < m; i++) {
                length += a[i][c] * a[i][c];
            }
            for (int k = c + 1; k <= n; k++) {
                double dot = head * (k < n ? a[c][k] : b[c]);
                for (int i = c + 1; i < m; i++) {
                    dot += a[i][c] * (k < n ? a[i][k] : b[i]);
                }
                double factor = 2 * dot / length;
                if (k < n) {
                    a[c][k] -= factor * head;
                } else {
                    b[c] -= factor * head;
                }
                for (int i = c + 1; i < m; i++) {
                    if (k < n) {
                        a[i][k] -= factor * a[i][c];
                    } else {
                        b[i] -= factor * a[i][c];
                    }
                }
            }
            a[c][c] = alpha;
        }
        double[] x = new double[n];
        for (int c = n - 1; c >= 0; c--) {
            double value = b[c];
            for (int k = c + 1; k < n; k++) {
                value -= a[c][k] * x[k];
            }
            x[c] = value / a[c][c];
        }
        return x;
    }

    /** (JᵀJ)⁻¹ = R⁻¹R⁻ᵀ from the QR of J. */
    private static double[][] covariance(double[][] j) {
        int m = j.length;
        int n = j[0].length;
        double[][] a = new double[m][];
        for (int i = 0; i < m; i++) {
            a[i] = j[i].clone();
        }
        triangular(a, new double[m], m, n);
        double[][] inverse = new double[n][n];
        for (int c = 0; c < n; c++) {
            inverse[c][c] = 1 / a[c][c];
            for (int i = c - 1; i >= 0; i--) {
                double value = 0;
                for (int k = i + 1; k <= c; k++) {
                    value -= a[i][k] * inverse[k][c];
                }
                inverse[i][c] = value / a[i][i];
            }
        }
        double[][] covariance = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                for (int c = Math.max(i, k); c < n; c++) {
                    covariance[i][k] += inverse[i][c] * inverse[k][c];
                }
            }
        }
        return covariance;
    }
}
