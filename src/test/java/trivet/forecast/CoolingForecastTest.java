package trivet.forecast;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trivet.forecast.CoolingForecast.Arrival;
import trivet.forecast.CoolingForecast.Forecast;
import trivet.forecast.CoolingForecast.Prior;
import trivet.forecast.CoolingForecast.Question;
import trivet.forecast.CoolingForecast.Target;

/** The forecast against values computed with SciPy 1.17 (least squares, t quantiles and covariance). */
class CoolingForecastTest {

    private static final double[] MINUTES = {0, 10, 20, 30};
    private static final double[] CELSIUS = {72.0, 61.5, 52.9, 45.6};
    private static final Prior PRIOR = new Prior(Math.log(75), 0.25);

    private static Forecast forecast(double[] minutes, double[] celsius, Prior prior, double airSd, double target, double limit) {
        return CoolingForecast.of(new Question(3, airSd, 0.5, 0.95, prior, List.of(new Target(target, limit)), minutes, celsius));
    }

    @ParameterizedTest
    @CsvSource({
        "1, 72.0000000, 75.0000000, 196.850144, 49.215537, 120.593, 321.328, 0.8615177",
        "2, 71.9291293, 61.4901331, 161.328031, 10.439399, 142.112, 183.143, 0.8697273",
        "3, 71.9120958, 61.8564276, 162.273769, 5.752081, 151.383, 173.948, 0.9867501",
        "4, 71.8794623, 62.2225922, 163.204890, 3.942633, 155.658, 171.118, 0.9997608"})
    void from_the_first_reading_on_with_a_prior(int n, double t0, double tau, double eta, double se, double low, double high, double late) {
        Forecast f = forecast(Arrays.copyOf(MINUTES, n), Arrays.copyOf(CELSIUS, n), PRIOR, Double.NaN, 8, 150);
        Arrival arrival = f.arrivals().get(0);
        assertEquals(t0, f.t0(), 1e-4);
        assertEquals(tau, f.tauMinutes(), 1e-4);
        assertEquals(eta, arrival.etaMinutes(), 1e-4);
        assertEquals(se, arrival.se(), 1e-4);
        assertEquals(low, arrival.low(), 1e-3);
        assertEquals(high, arrival.high(), 1e-3);
        assertEquals(late, arrival.probabilityLate(), 1e-5);
    }

    @Test
    void without_a_prior_it_is_least_squares_with_students_t() {
        Forecast f = forecast(MINUTES, CELSIUS, null, Double.NaN, 8, 150);
        assertEquals(71.90430263, f.t0(), 1e-7);
        assertEquals(62.09700630, f.tauMinutes(), 1e-7);
        assertEquals(162.89787885, f.arrivals().get(0).etaMinutes(), 1e-6);
        assertEquals(1.16404769, f.arrivals().get(0).se(), 1e-6);
        assertEquals(157.965599, f.arrivals().get(0).low(), 1e-4);
        assertEquals(167.984163, f.arrivals().get(0).high(), 1e-4);
    }

    @Test
    void air_that_is_not_known_widens_the_interval() {
        Forecast f = forecast(MINUTES, CELSIUS, PRIOR, 1, 8, 150);
        assertEquals(71.8791644, f.t0(), 1e-4);
        assertEquals(62.2610740, f.tauMinutes(), 1e-4);
        assertEquals(2.9658043, f.air(), 1e-4);
        assertEquals(162.912096, f.arrivals().get(0).etaMinutes(), 1e-3);
        assertEquals(9.364560, f.arrivals().get(0).se(), 1e-4);
        assertEquals(0.9245753, f.arrivals().get(0).probabilityLate(), 1e-5);
    }

    @Test
    void a_slow_tray_is_seen_after_twenty_minutes() {
        Forecast f = forecast(new double[] {0, 10, 20}, new double[] {74.0, 69.6, 65.3}, PRIOR, Double.NaN, 8, 240);
        assertEquals(74.3030928, f.t0(), 1e-4);
        assertEquals(143.7999734, f.tauMinutes(), 1e-3);
        assertEquals(382.148687, f.arrivals().get(0).etaMinutes(), 1e-3);
        assertEquals(27.317765, f.arrivals().get(0).se(), 1e-3);
        assertTrue(f.arrivals().get(0).probabilityLate() > 0.999);
    }

    @Test
    void air_on_the_target_is_refused_and_a_reading_that_does_not_fit_is_flagged() {
        assertThrows(IllegalArgumentException.class, () -> forecast(MINUTES, CELSIUS, PRIOR, Double.NaN, 3, 150));
        assertThrows(IllegalArgumentException.class, () -> forecast(new double[] {0, 10}, new double[] {72, 61.5}, null, Double.NaN, 8, 150));
        Forecast f = forecast(new double[] {0, 10, 20, 30, 40}, new double[] {72.0, 61.5, 66.9, 45.6, 39.5}, PRIOR, Double.NaN, 8, 150);
        assertTrue(f.flags().stream().anyMatch(flag -> flag.reading() == 3), f.flags().toString());
    }

    @Property(tries = 200)
    void a_further_reading_on_the_curve_never_widens_the_interval(@ForAll @DoubleRange(min = 25, max = 160) double tau, @ForAll @DoubleRange(min = 32, max = 120) double next,
            @ForAll @IntRange(min = 1, max = 4) int count) {
        double[] minutes = Arrays.copyOf(MINUTES, count);
        double[] celsius = new double[count];
        for (int i = 0; i < count; i++) {
            celsius[i] = 3 + 70 * Math.exp(-minutes[i] / tau);
        }
        Forecast before = forecast(minutes, celsius, PRIOR, Double.NaN, 8, 150);
        double[] more = Arrays.copyOf(minutes, count + 1);
        double[] warm = Arrays.copyOf(celsius, count + 1);
        more[count] = next;
        warm[count] = before.air() + (before.t0() - before.air()) * Math.exp(-next / before.tauMinutes());
        Forecast after = forecast(more, warm, PRIOR, Double.NaN, 8, 150);
        assertTrue(after.arrivals().get(0).se() <= before.arrivals().get(0).se() * (1 + 1e-9));
    }
}
