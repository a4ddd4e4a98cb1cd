package trivet.bench;

import java.util.List;
import java.util.Random;
import java.util.Set;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;
import trivet.chart.IndividualsChart;
import trivet.forecast.CoolingForecast;
import trivet.forecast.PlacesForecast;
import trivet.growth.Growth;
import trivet.growth.GrowthModel;
import trivet.lethality.Lethality;

/** The models' speed, as ratios in one run: prints what DEVELOPERS.md names; on one core, after warming up. */
public final class ScienceBench {

    private static final int ROUNDS = 7;
    private static double sink;

    private ScienceBench() {
    }

    private interface Work {
        double run();
    }

    /** The best of several rounds, in seconds for one run. */
    private static double seconds(int repeats, Work work) {
        double best = Double.MAX_VALUE;
        for (int round = 0; round < ROUNDS; round++) {
            long from = System.nanoTime();
            for (int i = 0; i < repeats; i++) {
                sink += work.run();
            }
            best = Math.min(best, (System.nanoTime() - from) / 1e9 / repeats);
        }
        return best;
    }

    public static void main(String... arguments) {
        lethality();
        forecast();
        growth();
        chart();
        System.out.println("(sum of results, so that nothing is left out: " + sink + ")");
    }

    private static void lethality() {
        int n = 10_000;
        double[] minutes = new double[n];
        double[] celsius = new double[n];
        Random random = new Random(1);
        for (int i = 0; i < n; i++) {
            minutes[i] = i * 0.1;
            celsius[i] = 60 + 15 * random.nextDouble();
        }
        Lethality lethality = new Lethality(Lethality.Settings.of(70, 7.5));
        double ours = seconds(500, () -> lethality.total(minutes, celsius));
        double pow = seconds(500, () -> {
            double sum = 0;
            for (int i = 0; i < n; i++) {
                sum += Math.pow(10, (celsius[i] - 70) / 7.5);
            }
            return sum;
        });
        System.out.printf("lethality: %.0f million readings/s, a loop of Math.pow %.0f: %.2f of it (goal 1.5)%n", n / ours / 1e6, n / pow / 1e6, pow / ours);
    }

    private static void forecast() {
        double[] minutes = new double[10];
        double[] celsius = new double[10];
        Random random = new Random(2);
        for (int i = 0; i < 10; i++) {
            minutes[i] = 10 * i;
            celsius[i] = 3 + 69 * Math.exp(-minutes[i] / 62) + 0.2 * random.nextGaussian();
        }
        CoolingForecast.Question question = new CoolingForecast.Question(3, Double.NaN, 0.5, 0.95, new CoolingForecast.Prior(Math.log(75), 0.25), List.of(new CoolingForecast.Target(8, 150)), minutes, celsius);
        double ours = seconds(20_000, () -> CoolingForecast.of(question).tauMinutes());
        MultivariateJacobianFunction model = point -> {
            double[][] jacobian = new double[11][2];
            double[] value = new double[11];
            double tau = Math.exp(point.getEntry(1));
            for (int i = 0; i < 10; i++) {
                double e = Math.exp(-minutes[i] / tau);
                value[i] = (3 + (point.getEntry(0) - 3) * e) / 0.5;
                jacobian[i][0] = e / 0.5;
                jacobian[i][1] = (point.getEntry(0) - 3) * e * minutes[i] / tau / 0.5;
            }
            value[10] = point.getEntry(1) / 0.25;
            jacobian[10][1] = 1 / 0.25;
            return new Pair<RealVector, org.hipparchus.linear.RealMatrix>(new ArrayRealVector(value), MatrixUtils.createRealMatrix(jacobian));
        };
        double[] target = new double[11];
        for (int i = 0; i < 10; i++) {
            target[i] = celsius[i] / 0.5;
        }
        target[10] = Math.log(75) / 0.25;
        double theirs = seconds(5_000, () -> new LevenbergMarquardtOptimizer().optimize(new LeastSquaresBuilder().start(new double[] {celsius[0], Math.log(75)}).model(model).target(target)
                .lazyEvaluation(false).maxEvaluations(1000).maxIterations(1000).build()).getPoint().getEntry(1));
        List<PlacesForecast.Place> places = List.of(new PlacesForecast.Place(0, 20, 3, new CoolingForecast.Prior(Math.log(75), 0.5)), new PlacesForecast.Place(25, -1, 2, new CoolingForecast.Prior(Math.log(75), 0.5)));
        List<CoolingForecast.Target> cold = List.of(new CoolingForecast.Target(8, 90));
        double moved = seconds(5_000, () -> PlacesForecast.of(places, 0.5, 0.95, cold, minutes, celsius).tauMinutes());
        System.out.printf("forecast of 10 readings over two places %.1f µs; 20 live batches %.2f ms (goal 20)%n", moved * 1e6, 20 * moved * 1e3);
        System.out.printf("forecast of 10 readings with its interval: %.1f µs, the fit alone by Hipparchus %.1f µs: %.1f times as fast (goal 5); 20 live batches %.2f ms (goal 20)%n", ours * 1e6, theirs * 1e6,
                theirs / ours, 20 * ours * 1e3);
    }

    private static void growth() {
        int n = 365 * 24 * 12;
        double[] hours = new double[n];
        double[] celsius = new double[n];
        Random random = new Random(3);
        for (int i = 0; i < n; i++) {
            hours[i] = i / 12.0;
            celsius[i] = 12 + 6 * random.nextDouble();
        }
        Growth growth = new Growth(GrowthModel.of("b-cereus-cooked-rice"), GrowthModel.Conditions.NONE, true);
        System.out.printf("growth over a year of 5-min readings: %.1f ms (goal 50)%n", 1e3 * seconds(10, () -> growth.integrals(hours, celsius)[n - 1]));
    }

    private static void chart() {
        double[] values = new double[5 * 365];
        Random random = new Random(4);
        for (int i = 0; i < values.length; i++) {
            values[i] = 4 + random.nextGaussian();
        }
        System.out.printf("control chart of five years, every rule: %.2f ms (goal 5)%n", 1e3 * seconds(50, () -> IndividualsChart.of(values, IndividualsChart.D2, Set.copyOf(IndividualsChart.RULES), Set.of()).signals().size()));
    }
}
