package trivet.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.hipparchus.linear.DiagonalMatrix;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;
import org.junit.jupiter.api.Test;
import trivet.forecast.CoolingForecast.Arrival;
import trivet.forecast.CoolingForecast.Forecast;
import trivet.forecast.CoolingForecast.Prior;
import trivet.forecast.CoolingForecast.Question;
import trivet.forecast.CoolingForecast.Target;
import trivet.forecast.PlacesForecast.Place;

/** One fit over several places, against the one-place forecast, exact curves, and Hipparchus' Levenberg-Marquardt. */
class PlacesForecastTest {

    private static final Prior USUAL = new Prior(Math.log(75), 0.5);
    private static final List<Place> BENCH_THEN_CHILLER = List.of(new Place(0, 20, 3, USUAL), new Place(20, -1, 2, new Prior(Math.log(40), 0.3)));

    /** 92 °C in air of 20 °C, τ 80 min, then after 20 min in air of −1 °C, τ 35 min. */
    private static double exact(double minute) {
        double bench = 20 + 72 * Math.exp(-Math.min(20, minute) / 80);
        return minute <= 20 ? bench : -1 + (bench + 1) * Math.exp(-(minute - 20) / 35);
    }

    private static double[] exactly(double... minutes) {
        return java.util.Arrays.stream(minutes).map(PlacesForecastTest::exact).toArray();
    }

    @Test
    void one_place_is_the_plain_forecast_with_its_air_estimated() {
        double[] minutes = {0, 10, 20, 30};
        double[] celsius = {72.0, 61.5, 52.9, 45.6};
        Prior prior = new Prior(Math.log(75), 0.25);
        List<Target> targets = List.of(new Target(8, 150));
        Forecast plain = CoolingForecast.of(new Question(3, 1, 0.5, 0.95, prior, targets, minutes, celsius));
        Forecast one = PlacesForecast.of(List.of(new Place(0, 3, 1, prior)), 0.5, 0.95, targets, minutes, celsius);
        Arrival a = plain.arrivals().get(0);
        Arrival b = one.arrivals().get(0);
        assertEquals(plain.tauMinutes(), one.tauMinutes(), 1e-6);
        assertEquals(a.etaMinutes(), b.etaMinutes(), 1e-5);
        assertEquals(a.se(), b.se(), 1e-5);
        assertEquals(a.low(), b.low(), 1e-4);
        assertEquals(a.probabilityLate(), b.probabilityLate(), 1e-7);
    }

    @Test
    void readings_on_the_bench_and_one_in_the_chiller_say_when_it_is_cold() {
        double[] minutes = {5, 12, 19, 30, 45, 60};
        Forecast f = PlacesForecast.of(BENCH_THEN_CHILLER, 0.5, 0.95, List.of(new Target(8, 90)), minutes, exactly(minutes));
        double truth = 20 + 35 * Math.log((exact(20) + 1) / 9);
        assertEquals(truth, f.arrivals().get(0).etaMinutes(), 2.5);
        assertTrue(f.arrivals().get(0).low() < truth && truth < f.arrivals().get(0).high());
        assertTrue(f.flags().isEmpty());
        double[] fewer = {5, 12, 19};
        Forecast before = PlacesForecast.of(BENCH_THEN_CHILLER, 0.5, 0.95, List.of(new Target(8, 90)), fewer, exactly(fewer));
        assertTrue(before.arrivals().get(0).se() > 4 * f.arrivals().get(0).se(), "not measured in the chiller yet: much less sure");
    }

    @Test
    void a_target_met_before_the_move_is_forecast_where_it_is_met() {
        double[] minutes = {5, 12, 19, 30};
        Forecast f = PlacesForecast.of(BENCH_THEN_CHILLER, 0.5, 0.95, List.of(new Target(80, Double.NaN)), minutes, exactly(minutes));
        assertEquals(80 * Math.log(72.0 / 60), f.arrivals().get(0).etaMinutes(), 1);
    }

    @Test
    void an_impossible_jump_is_flagged() {
        double[] minutes = {5, 12, 19, 30, 45, 60};
        double[] celsius = exactly(minutes);
        celsius[4] += 9;
        Forecast f = PlacesForecast.of(BENCH_THEN_CHILLER, 0.5, 0.95, List.of(new Target(8, 90)), minutes, celsius);
        assertTrue(f.flags().stream().anyMatch(flag -> flag.reading() == 5), f.flags().toString());
    }

    /** Oracle: Hipparchus' Levenberg-Marquardt with derivatives by differences, on the same residuals. */
    @Property(tries = 40)
    void hipparchus_finds_the_same_minimum(@ForAll @DoubleRange(min = -2, max = 2) double a, @ForAll @DoubleRange(min = -2, max = 2) double b, @ForAll @DoubleRange(min = -2, max = 2) double c) {
        double[] minutes = {4, 15, 27, 40, 66};
        double[] celsius = exactly(minutes);
        celsius[1] += a;
        celsius[2] += b;
        celsius[4] += c;
        Forecast own = PlacesForecast.of(BENCH_THEN_CHILLER, 0.5, 0.95, List.of(new Target(8, 90)), minutes, celsius);
        MultivariateJacobianFunction model = point -> {
            double[] at = point.toArray();
            double[] r = model(at, minutes, celsius);
            double[][] j = new double[r.length][at.length];
            for (int k = 0; k < at.length; k++) {
                double[] up = at.clone();
                double[] down = at.clone();
                up[k] += 1e-6;
                down[k] -= 1e-6;
                double[] high = model(up, minutes, celsius);
                double[] low = model(down, minutes, celsius);
                for (int i = 0; i < r.length; i++) {
                    j[i][k] = (high[i] - low[i]) / 2e-6;
                }
            }
            return new Pair<>(new org.hipparchus.linear.ArrayRealVector(r), new org.hipparchus.linear.Array2DRowRealMatrix(j));
        };
        double[] found = new LevenbergMarquardtOptimizer().optimize(new LeastSquaresBuilder().model(model).target(new double[minutes.length + 4]).start(new double[] {90, Math.log(75), 20, Math.log(40), -1})
                .weight(new DiagonalMatrix(java.util.stream.DoubleStream.generate(() -> 1).limit(minutes.length + 4).toArray())).maxEvaluations(1000).maxIterations(1000).build()).getPoint().toArray();
        assertEquals(found[0], own.t0(), 1e-4);
        assertEquals(Math.exp(found[3]), own.tauMinutes(), 1e-3);
        assertEquals(found[4], own.air(), 1e-3);
    }

    private static double[] model(double[] x, double[] minutes, double[] celsius) {
        double[] r = new double[minutes.length + 4];
        double entering = x[2] + (x[0] - x[2]) * Math.exp(-20 / Math.exp(x[1]));
        for (int i = 0; i < minutes.length; i++) {
            double t = minutes[i];
            double modelled = t <= 20 ? x[2] + (x[0] - x[2]) * Math.exp(-t / Math.exp(x[1])) : x[4] + (entering - x[4]) * Math.exp(-(t - 20) / Math.exp(x[3]));
            r[i] = (modelled - celsius[i]) / 0.5;
        }
        r[minutes.length] = (x[1] - Math.log(75)) / 0.5;
        r[minutes.length + 1] = (x[2] - 20) / 3;
        r[minutes.length + 2] = (x[3] - Math.log(40)) / 0.3;
        r[minutes.length + 3] = (x[4] + 1) / 2;
        return r;
    }
}
