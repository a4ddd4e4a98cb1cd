package trivet.sign;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.discrete.BinomialDistribution;

/**
 * Tests of how records look, each with the probability of something at least as odd by chance. Every one has an innocent
 * explanation; the rate of false alarms over many tests is controlled by Benjamini and Hochberg (J. R. Stat. Soc. B 57, 1995, pp. 289-300 from memory).
 */
public final class Signs {

    /** Fewer values than this are not tested. */
    public static final int FEWEST = 50;
    /** A digit test is honest only when the spread is this many times the resolution, or more. */
    public static final double SPREAD_OVER_RESOLUTION = 10;

    private Signs() {
    }

    /** A χ² test: the statistic and the upper-tail probability. */
    public record ChiSquare(double statistic, double probability) {
    }

    /** Whether last digits are used evenly: χ² with nine degrees of freedom of the counts of 0 to 9. */
    public static ChiSquare lastDigits(int[] counts) {
        int n = Arrays.stream(counts).sum();
        double expected = n / 10.0;
        double statistic = 0;
        for (int count : counts) {
            statistic += (count - expected) * (count - expected) / expected;
        }
        return new ChiSquare(statistic, 1 - new ChiSquaredDistribution(9).cumulativeProbability(statistic));
    }

    /** Whether digits can be tested at all: enough values, spread well over the resolution. */
    public static boolean digitsTestable(double[] values, double resolution) {
        if (values.length < FEWEST) {
            return false;
        }
        double mean = Arrays.stream(values).average().orElse(0);
        double variance = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum() / (values.length - 1);
        return Math.sqrt(variance) >= SPREAD_OVER_RESOLUTION * resolution;
    }

    /** The probability that at least so many of n fall on something that has probability p each. */
    public static double atLeast(int n, int count, double p) {
        return count <= 0 ? 1 : 1 - new BinomialDistribution(n, p).cumulativeProbability(count - 1);
    }

    /**
     * The probability of at least one run of {@code length} equal values among n, when a value equals the one before with
     * probability p: a run of k equal values is k − 1 such successes in a row among n − 1.
     */
    public static double runOfSame(int n, int length, double p) {
        int need = length - 1;
        double[] state = new double[need];
        state[0] = 1;
        double reached = 0;
        for (int i = 1; i < n; i++) {
            double[] next = new double[need];
            double alive = 0;
            for (int k = 0; k < need; k++) {
                alive += state[k];
                if (k + 1 < need) {
                    next[k + 1] = state[k] * p;
                } else {
                    reached += state[k] * p;
                }
            }
            next[0] = alive * (1 - p);
            state = next;
        }
        return reached;
    }

    /** The probability of intervals at least as regular as these, when their standard deviation should be sd: lower tail of χ². */
    public static double tooRegular(double[] intervals, double sd) {
        double mean = Arrays.stream(intervals).average().orElse(0);
        double squares = Arrays.stream(intervals).map(v -> (v - mean) * (v - mean)).sum();
        return new ChiSquaredDistribution(intervals.length - 1).cumulativeProbability(squares / (sd * sd));
    }

    /** Which of many tests stand out when at most a share of those named may be false alarms (Benjamini and Hochberg). */
    public static boolean[] standOut(double[] probabilities, double share) {
        int m = probabilities.length;
        List<Integer> order = IntStream.range(0, m).boxed().sorted(Comparator.comparingDouble(i -> probabilities[i])).toList();
        int last = -1;
        for (int i = 0; i < m; i++) {
            if (probabilities[order.get(i)] <= share * (i + 1) / m) {
                last = i;
            }
        }
        boolean[] out = new boolean[m];
        for (int i = 0; i <= last; i++) {
            out[order.get(i)] = true;
        }
        return out;
    }
}
