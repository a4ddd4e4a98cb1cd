package trivet.lethality;

import java.util.Arrays;

/**
 * The lethality of a core temperature curve: minutes at a reference temperature that kill as much, F = ∫ 10^((T − Tref)/z) dt
 * in minutes, T and z in °C (Bigelow's method; D. R. Heldman and R. P. Singh, thermal processing; first-order death, T at
 * the coldest point, z inside the temperatures in which it was measured).
 *
 * <p>Between two readings the temperature is taken as a straight line, for which the log-mean rule is exact:
 * ΔF = Δt (L2 − L1) / ln(L2/L1). The trapezoid over-credits heat and is there only to reproduce published worksheets. The
 * least rule takes the lower rate of the two, and is used over gaps longer than allowed. Nothing is credited before the
 * first or after the last reading.
 */
public final class Lethality {

    private static final double LN10 = Math.log(10);
    /** Below this the quotient of the log-mean rule loses digits, and the series of (e^d − 1)/d is used, exact there to the last place. */
    private static final double SMALL = 0.01;
    /** The reference of the conservative mode, °C. */
    public static final double CONSERVATIVE_REFERENCE = 70;
    /** z below 70 °C in the conservative mode, °C: gives less credit there (ACMSF 2007, burgers). */
    public static final double CONSERVATIVE_Z_BELOW = 6;
    /** z from 70 °C on in the conservative mode, °C (L. monocytogenes). */
    public static final double CONSERVATIVE_Z_ABOVE = 7.5;

    private final Settings settings;
    private final double below;
    private final double above;
    private final double split;

    /** How a segment between two readings counts. */
    public enum Rule { LOG_MEAN, TRAPEZOID, LEAST }

    /**
     * What to calculate with.
     *
     * @param reference the reference temperature, °C
     * @param z the rise that makes the rate tenfold, °C; not used in the conservative mode
     * @param conservative z 6 °C below 70 °C and 7.5 °C from there on, reference 70 °C
     * @param longestGap minutes; a longer gap counts by the least rule; infinite for no bound
     * @param floor °C; nothing below it counts; minus infinity for none
     * @param cap °C; whatever is hotter counts as this; infinite for none
     */
    public record Settings(double reference, double z, Rule rule, boolean conservative, double longestGap, double floor, double cap) {

        /** Refuses a z that is not above zero and a cap below the floor. */
        public Settings {
            if (!conservative && !(z > 0 && Double.isFinite(z) && Double.isFinite(reference))) {
                throw new IllegalArgumentException("z is above 0 °C, and the reference a finite temperature.");
            }
            if (!(longestGap > 0)) {
                throw new IllegalArgumentException("The longest gap is above 0 minutes.");
            }
            if (Double.isNaN(floor) || Double.isNaN(cap) || cap < floor) {
                throw new IllegalArgumentException("The cap is not below the floor.");
            }
        }

        /** The exact rule for a reference and z, without floor, cap or gaps. */
        public static Settings of(double reference, double z) {
            return new Settings(reference, z, Rule.LOG_MEAN, false, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        }
    }

    /** A calculation by settings. */
    public Lethality(Settings settings) {
        this.settings = settings;
        this.split = settings.conservative() ? CONSERVATIVE_REFERENCE : Double.NaN;
        this.below = LN10 / (settings.conservative() ? CONSERVATIVE_Z_BELOW : settings.z());
        this.above = LN10 / (settings.conservative() ? CONSERVATIVE_Z_ABOVE : settings.z());
    }

    private double reference() {
        return settings.conservative() ? CONSERVATIVE_REFERENCE : settings.reference();
    }

    private boolean plain() {
        return settings.rule() == Rule.LOG_MEAN && !settings.conservative() && settings.floor() == Double.NEGATIVE_INFINITY && settings.cap() == Double.POSITIVE_INFINITY
                && settings.longestGap() == Double.POSITIVE_INFINITY;
    }

    /** Minutes at the reference by each reading, the first 0; times ascending, at least one reading. */
    public double[] cumulative(double[] minutes, double[] celsius) {
        double[] sums = new double[minutes.length];
        if (plain()) {
            plain(minutes, celsius, sums);
            return sums;
        }
        for (int i = 1; i < minutes.length; i++) {
            sums[i] = sums[i - 1] + segment(minutes[i] - minutes[i - 1], celsius[i - 1], celsius[i]);
        }
        return sums;
    }

    /** Minutes at the reference over all readings, without keeping those between. */
    public double total(double[] minutes, double[] celsius) {
        if (plain()) {
            return plain(minutes, celsius, null);
        }
        double sum = 0;
        for (int i = 1; i < minutes.length; i++) {
            sum += segment(minutes[i] - minutes[i - 1], celsius[i - 1], celsius[i]);
        }
        return sum;
    }

    /** The exact rule with one exponential a reading and no logarithm. */
    private double plain(double[] minutes, double[] celsius, double[] sums) {
        double slope = below;
        double away = slope * settings.reference();
        double at = celsius[0];
        double time = minutes[0];
        double before = Exp.exp(slope * at - away);
        double sum = 0;
        for (int i = 1; i < minutes.length; i++) {
            double next = celsius[i];
            double until = minutes[i];
            double rate = Exp.exp(slope * next - away);
            double rise = slope * (next - at);
            sum += logMean(until - time, before, rate, rise);
            at = next;
            time = until;
            before = rate;
            if (sums != null) {
                sums[i] = sum;
            }
        }
        return sum;
    }

    /** (e^d − 1)/d for a small d. */
    private static double series(double d) {
        return 1 + d * (1.0 / 2 + d * (1.0 / 6 + d * (1.0 / 24 + d * (1.0 / 120 + d * (1.0 / 720)))));
    }

    private static double logMean(double dt, double from, double to, double d) {
        return Math.abs(d) < SMALL ? dt * from * series(d) : dt * (to - from) / d;
    }

    /** The rate at a temperature: 1 at the reference, 0 below the floor. */
    public double rate(double celsius) {
        if (celsius < settings.floor()) {
            return 0;
        }
        double t = Math.min(celsius, settings.cap());
        return Math.exp((t < split ? below : above) * (t - reference()));
    }

    private double segment(double dt, double from, double to) {
        if (settings.rule() == Rule.LEAST || dt > settings.longestGap()) {
            return dt * Math.min(rate(from), rate(to));
        }
        if (settings.rule() == Rule.TRAPEZOID) {
            return dt * (rate(from) + rate(to)) / 2;
        }
        return exact(dt, from, to);
    }

    /** The exact integral over a straight segment, cut where it crosses the floor, the change of z, and the cap. */
    private double exact(double dt, double from, double to) {
        double[] cuts = cuts(from, to);
        double sum = 0;
        for (int i = 1; i < cuts.length; i++) {
            sum += piece(from == to ? dt : dt * (cuts[i] - cuts[i - 1]) / (to - from), cuts[i - 1], cuts[i]);
        }
        return sum;
    }

    private double[] cuts(double from, double to) {
        double low = Math.min(from, to);
        double high = Math.max(from, to);
        double[] inside = Arrays.stream(new double[] {settings.floor(), split, settings.cap()}).filter(cut -> cut > low && cut < high).sorted().toArray();
        double[] cuts = new double[inside.length + 2];
        for (int i = 0; i < inside.length; i++) {
            cuts[i + 1] = from < to ? inside[i] : inside[inside.length - 1 - i];
        }
        cuts[0] = from;
        cuts[cuts.length - 1] = to;
        return cuts;
    }

    private double piece(double dt, double from, double to) {
        double middle = from + (to - from) / 2;
        if (middle < settings.floor()) {
            return 0;
        }
        if (middle >= settings.cap()) {
            return dt * rate(settings.cap());
        }
        double slope = middle < split ? below : above;
        return logMean(dt, Math.exp(slope * (from - reference())), Math.exp(slope * (to - reference())), slope * (to - from));
    }

    /** The first minute at which the sum reaches a target, by the rule of its segment; NaN when it never does. */
    public double reached(double target, double[] minutes, double[] celsius, double[] sums) {
        if (target <= 0) {
            return minutes[0];
        }
        for (int i = 1; i < sums.length; i++) {
            if (sums[i] >= target) {
                return minutes[i - 1] + within(target - sums[i - 1], minutes[i] - minutes[i - 1], celsius[i - 1], celsius[i]);
            }
        }
        return Double.NaN;
    }

    /** Minutes into a segment until so much has been added. */
    private double within(double wanted, double dt, double from, double to) {
        double first = rate(from);
        double last = rate(to);
        if (settings.rule() == Rule.LEAST || dt > settings.longestGap()) {
            return wanted / Math.min(first, last);
        }
        if (settings.rule() == Rule.TRAPEZOID) {
            double bend = (last - first) / dt;
            return Math.abs(bend) < 1e-300 ? wanted / first : 2 * wanted / (first + Math.sqrt(first * first + 2 * bend * wanted));
        }
        double[] cuts = cuts(from, to);
        double gone = 0;
        double sum = 0;
        for (int i = 1; i < cuts.length; i++) {
            double part = from == to ? dt : dt * (cuts[i] - cuts[i - 1]) / (to - from);
            double more = piece(part, cuts[i - 1], cuts[i]);
            if (sum + more >= wanted) {
                return gone + inPiece(wanted - sum, part, cuts[i - 1], cuts[i]);
            }
            sum += more;
            gone += part;
        }
        return dt;
    }

    private double inPiece(double wanted, double dt, double from, double to) {
        double middle = from + (to - from) / 2;
        if (middle >= settings.cap()) {
            return wanted / rate(settings.cap());
        }
        double slope = middle < split ? below : above;
        double first = Math.exp(slope * (from - reference()));
        double k = slope * (to - from) / dt;
        return k == 0 ? wanted / first : Math.log1p(k * wanted / first) / k;
    }

    /** The least minutes at a temperature that are worth as many at the reference; the inverse of the rate. */
    public double equivalentMinutes(double minutesAtReference, double celsius) {
        return minutesAtReference / rate(celsius);
    }
}
