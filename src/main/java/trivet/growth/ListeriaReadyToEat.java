package trivet.growth;

/**
 * L. monocytogenes in ready-to-eat food: a square-root curve times factors of water and acid, and the interaction ξ of what
 * hinders it (Y. Le Marc et al., Int. J. Food Microbiol. 73, 2002, pp. 219-237): 1 for ψ ≤ 0.5, 2 (1 − ψ) below 1, 0 from there on.
 * Not above 25 °C, since the curve has no highest temperature.
 *
 * @param a the factor of (T + 2.83)², 1/h
 * @param water the factor of water activity, 0 to 1
 * @param acid the factor of pH, 0 to 1
 */
record ListeriaReadyToEat(double a, double water, double acid) implements RateCurve {

    private static final double LOWEST = -2.83;
    private static final double REFERENCE = 25;
    private static final double STEP = 0.5;
    private static final double NODE = Math.sqrt(0.6);

    private double interaction(double t) {
        double heat = square(1 - (t - LOWEST) / (REFERENCE - LOWEST));
        double dry = square(1 - Math.sqrt(water));
        double sour = square(1 - Math.sqrt(acid));
        double psi = heat / (2 * (1 - dry) * (1 - sour)) + dry / (2 * (1 - heat) * (1 - sour)) + sour / (2 * (1 - heat) * (1 - dry));
        return !(psi < 1) ? 0 : psi <= 0.5 ? 1 : 2 * (1 - psi);
    }

    private static double square(double value) {
        return value * value;
    }

    @Override
    public double rate(double t) {
        return t <= LOWEST || t > REFERENCE ? 0 : a * (t - LOWEST) * (t - LOWEST) * interaction(t);
    }

    @Override
    public double antiderivative(double t) {
        throw new UnsupportedOperationException("The interaction has no closed form.");
    }

    /** Three-point Gauss and Legendre over steps of at most 0.5 °C: exact where ξ is 1, and within 1e-6 of it elsewhere. */
    @Override
    public double integral(double hours, double from, double to) {
        int steps = Math.max(1, (int) Math.ceil(Math.abs(to - from) / STEP));
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            double middle = from + (to - from) * (i + 0.5) / steps;
            double half = (to - from) / steps / 2;
            sum += 5 * rate(middle - half * NODE) + 8 * rate(middle) + 5 * rate(middle + half * NODE);
        }
        return hours * sum / 18 / steps;
    }

    @Override
    public double lowest() {
        return LOWEST;
    }

    @Override
    public double highest() {
        return REFERENCE;
    }
}
