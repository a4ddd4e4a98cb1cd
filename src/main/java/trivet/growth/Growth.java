package trivet.growth;

/**
 * Growth over a temperature curve in closed form (J. Baranyi and T. A. Roberts, Int. J. Food Microbiol. 23, 1994, pp. 277-294):
 * M = ∫ μ(T) dt; A = ln((1 + q0 e^M)/(1 + q0)), or M without a lag; N = N0 e^A / (1 + (e^A − 1) N0/Nmax); counts as log10.
 * Between knots the temperature is taken as a straight line.
 */
public final class Growth {

    private static final double LN10 = Math.log(10);
    private final RateCurve curve;
    private final double q0;

    /** Growth of a model under conditions. */
    public Growth(GrowthModel model, GrowthModel.Conditions conditions, boolean lag) {
        this.curve = model.curve().of(conditions);
        this.q0 = lag ? model.lag() : Double.NaN;
    }

    /** The rate at a temperature, 1/h, natural logarithm. */
    public double rate(double celsius) {
        return curve.rate(celsius);
    }

    /** Whether some of a curve lies where the model says that nothing grows. */
    public boolean leavesRange(double[] celsius) {
        for (double t : celsius) {
            if (t <= curve.lowest() || t >= curve.highest()) {
                return true;
            }
        }
        return false;
    }

    /** M by each knot, the first 0; hours ascending. */
    public double[] integrals(double[] hours, double[] celsius) {
        double[] sums = new double[hours.length];
        for (int i = 1; i < hours.length; i++) {
            sums[i] = sums[i - 1] + curve.integral(hours[i] - hours[i - 1], celsius[i - 1], celsius[i]);
        }
        return sums;
    }

    /** The log10 count after so much of M, from a start and up to a maximum. */
    public double log(double integral, double startLog, double maxLog) {
        double a = Double.isNaN(q0) ? integral : adjusted(integral);
        double room = Math.exp((startLog - maxLog) * LN10);
        return startLog + (a - Math.log1p(Math.expm1(a) * room)) / LN10;
    }

    private double adjusted(double integral) {
        return Math.log1p(q0 * Math.expm1(integral) / (1 + q0));
    }
}
