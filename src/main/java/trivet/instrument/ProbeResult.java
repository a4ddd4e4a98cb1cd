package trivet.instrument;

/**
 * What a check of a probe in ice or boiling water shows: the error, and the probability that it lies within the tolerance, with a
 * budget of a display of 0.1 °C and a bath known to ±0.15 °C (common practice, no source).
 *
 * @param error what the probe showed more than it should have, °C
 */
public record ProbeResult(double error, Conformance conformance) {

    private static final double RESOLUTION = 0.1;
    private static final double BATH_HALF_WIDTH = 0.15;

    /** The result for an error and a tolerance about 0, °C. */
    public static ProbeResult of(double error, double lower, double upper) {
        double uncertainty = new Uncertainty().addResolution(RESOLUTION).addHalfWidth(BATH_HALF_WIDTH).standard();
        return new ProbeResult(error, Conformance.of(error, uncertainty, lower, upper, Conformance.USUAL_COVERAGE));
    }
}
