package trivet.growth;

/** How fast an organism grows at a temperature, and the exact integral of that over a straight change of temperature. */
interface RateCurve {

    /** The specific growth rate at a temperature, 1/h (natural logarithm); 0 outside the curve's bounds. */
    double rate(double celsius);

    /** The antiderivative of the rate over the temperature, 1/h · °C, up to a constant; used between the bounds only. */
    double antiderivative(double celsius);

    /** The temperature at and below which there is no growth, °C. */
    double lowest();

    /** The temperature at and above which there is no growth, °C; infinite where the curve has none. */
    double highest();

    /**
     * The integral of the rate over a straight segment, dimensionless: the quotient of the antiderivative's difference and
     * the temperature's, times the hours. Below a change of 0.001 °C the middle's rate is taken, since the quotient loses digits.
     */
    default double integral(double hours, double from, double to) {
        double low = Math.min(from, to);
        double high = Math.max(from, to);
        if (high - low < 1e-3) {
            return hours * rate((from + to) / 2);
        }
        double a = Math.max(low, lowest());
        double b = Math.min(high, highest());
        return a >= b ? 0 : hours / (high - low) * (antiderivative(b) - antiderivative(a));
    }

    /** μ = a (T − Tmin)² (1 − e^(b (T − Tmax))) (D. A. Ratkowsky et al., J. Bacteriol. 154, 1983, pp. 1222-1226). */
    record Ratkowsky(double a, double lowest, double b, double highest) implements RateCurve {
        @Override
        public double rate(double t) {
            return t <= lowest || t >= highest ? 0 : a * (t - lowest) * (t - lowest) * -Math.expm1(b * (t - highest));
        }

        @Override
        public double antiderivative(double t) {
            double u = t - lowest;
            double w = highest - lowest;
            return a * (u * u * u / 3 - Math.exp(b * (u - w)) * (u * u / b - 2 * u / (b * b) + 2 / (b * b * b)));
        }
    }

    /** The cardinal model with inflection, n = 2 (L. Rosso et al., J. Theor. Biol. 162, 1993, pp. 447-463). */
    record Cardinal(double optimum, double lowest, double best, double highest) implements RateCurve {
        private double slope() {
            return (best - lowest) * ((best - lowest) + 2 * (best - highest));
        }

        private double level() {
            return (best - lowest) * (-(best - lowest) * best - (best - highest) * (best + lowest));
        }

        @Override
        public double rate(double t) {
            return t <= lowest || t >= highest ? 0 : optimum * (t - highest) * (t - lowest) * (t - lowest) / (slope() * t + level());
        }

        @Override
        public double antiderivative(double t) {
            double r = -level() / slope();
            double x = t - r;
            double p = r - highest;
            double q = r - lowest;
            double c0 = p * q * q;
            double c1 = q * q + 2 * p * q;
            double c2 = p + 2 * q;
            return optimum / slope() * (c0 * Math.log(Math.abs(x)) + c1 * x + c2 * x * x / 2 + x * x * x / 3);
        }
    }

    /** μ = a (T − Tmin)² up to a bound (square-root model; D. A. Ratkowsky et al., J. Bacteriol. 149, 1982, pp. 1-5). */
    record SquareRoot(double a, double lowest, double highest) implements RateCurve {
        @Override
        public double rate(double t) {
            return t <= lowest || t > highest ? 0 : a * (t - lowest) * (t - lowest);
        }

        @Override
        public double antiderivative(double t) {
            double u = t - lowest;
            return a * u * u * u / 3;
        }
    }
}
