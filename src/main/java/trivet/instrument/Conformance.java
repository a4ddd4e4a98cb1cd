package trivet.instrument;

import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * The probability that the true value lies within a tolerance, given what was read and its standard uncertainty, and the
 * limits of acceptance behind a guard band (JCGM 106:2012, normal distribution):
 * p = Φ((upper − y)/u) − Φ((lower − y)/u); accept from lower + k u to upper − k u.
 *
 * @param acceptLower NaN where there is no lower limit
 * @param acceptUpper NaN where there is no upper limit
 */
public record Conformance(double probability, double acceptLower, double acceptUpper) {

    /** One-sided 95 %. */
    public static final double USUAL_COVERAGE = 1.6448536269514722;
    private static final double PASSES = 0.95;
    private static final double ADJUSTS = 0.5;

    /** What becomes of an instrument. */
    public enum Outcome { PASS, ADJUST, FAIL }

    /** The conformance of a value; limits NaN for none, at least one given; refuses an uncertainty that is not above 0. */
    public static Conformance of(double value, double uncertainty, double lower, double upper, double coverage) {
        if (!(uncertainty > 0)) {
            throw new IllegalArgumentException("A standard uncertainty is above 0.");
        }
        if (Double.isNaN(lower) && Double.isNaN(upper)) {
            throw new IllegalArgumentException("Give a lower or an upper limit, or both.");
        }
        if (lower >= upper) {
            throw new IllegalArgumentException("The lower limit lies below the upper one.");
        }
        NormalDistribution normal = new NormalDistribution();
        double below = Double.isNaN(upper) ? 1 : normal.cumulativeProbability((upper - value) / uncertainty);
        double under = Double.isNaN(lower) ? 0 : normal.cumulativeProbability((lower - value) / uncertainty);
        return new Conformance(below - under, lower + coverage * uncertainty, upper - coverage * uncertainty);
    }

    /** Pass from 0.95, adjust and check again from 0.5, else fail. */
    public Outcome outcome() {
        return probability >= PASSES ? Outcome.PASS : probability >= ADJUSTS ? Outcome.ADJUST : Outcome.FAIL;
    }
}
