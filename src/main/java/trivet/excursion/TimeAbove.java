package trivet.excursion;

import java.util.ArrayList;
import java.util.List;

/**
 * Time strictly above a limit, from readings at any times with a straight line between them, and the area above it in
 * degree-minutes. Gaps longer than the longest allowed count only as unknown: missing data is never within.
 */
public record TimeAbove(double minutesAbove, double degreeMinutes, double unknownMinutes) {

    /** The time above; minutes ascending, at least two readings. */
    public static TimeAbove of(double limit, double longestGap, double[] minutes, double[] celsius) {
        double above = 0;
        double area = 0;
        double unknown = 0;
        for (int i = 1; i < minutes.length; i++) {
            double dt = minutes[i] - minutes[i - 1];
            if (dt > longestGap) {
                unknown += dt;
                continue;
            }
            double a = celsius[i - 1] - limit;
            double b = celsius[i] - limit;
            if (a > 0 && b > 0) {
                above += dt;
                area += dt * (a + b) / 2;
            } else if (a > 0 || b > 0) {
                double top = Math.max(a, b);
                double share = top / Math.abs(a - b);
                above += share * dt;
                area += share * dt * top / 2;
            }
        }
        return new TimeAbove(above, area, unknown);
    }

    /** An excursion: from the first reading above the upper threshold to the first at or below the lower one. */
    public record Excursion(double from, double to) {
    }

    /**
     * Excursions with delay and hysteresis: opened when readings stay above {@code high} for at least {@code openAfter} minutes, closed
     * when they stay at or below {@code low} for at least {@code closeAfter}; the end is NaN for one that is still open.
     */
    public static List<Excursion> excursions(double[] minutes, double[] celsius, double high, double openAfter, double low, double closeAfter) {
        List<Excursion> all = new ArrayList<>();
        double since = Double.NaN;
        double opened = Double.NaN;
        double below = Double.NaN;
        for (int i = 0; i < minutes.length; i++) {
            if (Double.isNaN(opened)) {
                since = celsius[i] > high ? Double.isNaN(since) ? minutes[i] : since : Double.NaN;
                if (!Double.isNaN(since) && minutes[i] - since >= openAfter) {
                    opened = since;
                    below = Double.NaN;
                }
            } else {
                below = celsius[i] <= low ? Double.isNaN(below) ? minutes[i] : below : Double.NaN;
                if (!Double.isNaN(below) && minutes[i] - below >= closeAfter) {
                    all.add(new Excursion(opened, below));
                    opened = Double.NaN;
                    since = Double.NaN;
                }
            }
        }
        if (!Double.isNaN(opened)) {
            all.add(new Excursion(opened, Double.NaN));
        }
        return all;
    }

    /**
     * Mean kinetic temperature, °C, of temperatures with weights (USP 1160, ΔH 83.144 kJ/mol, so that ΔH/R is 10,000 K). An index of
     * slow decay, for information only: it says nothing of bugs.
     */
    public static double meanKinetic(double[] celsius, double[] weights) {
        double sum = 0;
        double all = 0;
        for (int i = 0; i < celsius.length; i++) {
            sum += weights[i] * Math.exp(-10_000 / (celsius[i] + 273.15));
            all += weights[i];
        }
        return 10_000 / -Math.log(sum / all) - 273.15;
    }
}
