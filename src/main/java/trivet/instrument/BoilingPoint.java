package trivet.instrument;

/**
 * The boiling point of water at a pressure, by the backward saturation equation of IAPWS-IF97 (region 4, equation 31; IAPWS R7-97,
 * 2012), and the standard pressure at an altitude (ICAO Doc 7488). Weather moves the pressure by some 30 hPa, 0.85 °C: use the
 * station's own pressure, not one reduced to sea level, where 1 °C matters.
 */
public final class BoilingPoint {

    private static final double[] N = {0, 0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7, 0.14915108613530e2,
        -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3};
    private static final double ZERO = 273.15;

    private BoilingPoint() {
    }

    /** The standard pressure at an altitude in metres, hPa; refuses less than −430 m and more than 11,000 m. */
    public static double pressure(double altitude) {
        if (!(altitude >= -430 && altitude <= 11_000)) {
            throw new IllegalArgumentException("An altitude lies between -430 and 11,000 m.");
        }
        return 1013.25 * Math.pow(1 - 0.0065 * altitude / 288.15, 5.2558797);
    }

    /** The saturation temperature at a pressure in hPa, °C; refuses pressures outside the equation, 6.11213 to 220,640 hPa. */
    public static double celsius(double hectopascal) {
        if (!(hectopascal >= 6.11213 && hectopascal <= 220_640)) {
            throw new IllegalArgumentException("A pressure lies between 6.11213 and 220,640 hPa.");
        }
        return kelvin(hectopascal / 10_000) - ZERO;
    }

    /** The saturation temperature at a pressure in MPa, K. */
    static double kelvin(double megapascal) {
        double b = Math.sqrt(Math.sqrt(megapascal));
        double e = b * b + N[3] * b + N[6];
        double f = N[1] * b * b + N[4] * b + N[7];
        double g = N[2] * b * b + N[5] * b + N[8];
        double d = 2 * g / (-f - Math.sqrt(f * f - 4 * e * g));
        return (N[10] + d - Math.sqrt((N[10] + d) * (N[10] + d) - 4 * (N[9] + N[10] * d))) / 2;
    }

    /** The saturation pressure at a temperature in K, MPa (equation 30). */
    static double megapascal(double kelvin) {
        double t = kelvin + N[9] / (kelvin - N[10]);
        double a = t * t + N[1] * t + N[2];
        double b = N[3] * t * t + N[4] * t + N[5];
        double c = N[6] * t * t + N[7] * t + N[8];
        double q = 2 * c / (-b + Math.sqrt(b * b - 4 * a * c));
        return q * q * q * q;
    }
}
