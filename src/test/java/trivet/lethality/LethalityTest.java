package trivet.lethality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trivet.lethality.Lethality.Rule;
import trivet.lethality.Lethality.Settings;

/** Lethality against closed forms, published equivalents and quadrature; where no source is named the value was computed with SciPy 1.17. */
class LethalityTest {

    private static final double[] MINUTES = {0, 5, 10, 15, 20, 25, 30, 32, 34, 36, 40, 45};
    private static final double[] CELSIUS = {8, 14, 28, 44, 57, 66, 71, 72, 72, 71, 66, 58};
    private static final double NONE = Double.NEGATIVE_INFINITY;
    private static final double ALL = Double.POSITIVE_INFINITY;

    private static double total(Settings settings, double[] minutes, double[] celsius) {
        double[] sums = new Lethality(settings).cumulative(minutes, celsius);
        return sums[sums.length - 1];
    }

    private static Settings with(double z, Rule rule) {
        return new Settings(70, z, rule, false, ALL, NONE, ALL);
    }

    @Test
    void two_minutes_at_the_reference_are_two_minutes() {
        assertEquals(2, total(Settings.of(70, 7.5), new double[] {0, 2}, new double[] {70, 70}), 1e-12);
    }

    @Test
    void the_rate_at_110_of_the_canners_reference_is_the_published_one() {
        // dairyscience.info, F-value of a thermal process: L(110 °C; 121.11 °C, z 10 °C) = 0.077
        assertEquals(0.077, new Lethality(Settings.of(121.11, 10)).rate(110), 5e-4);
    }

    @Test
    void a_straight_rise_is_exact_and_the_trapezoid_gives_more() {
        double[] ends = {60, 72};
        assertEquals(5.867646047, total(with(7.5, Rule.LOG_MEAN), new double[] {0, 12}, ends), 1e-8);
        assertEquals(11.365594, total(with(7.5, Rule.TRAPEZOID), new double[] {0, 12}, ends), 1e-6);
        assertEquals(6.587167, total(with(7.5, Rule.TRAPEZOID), new double[] {0, 4, 8, 12}, new double[] {60, 64, 68, 72}), 1e-6);
    }

    @ParameterizedTest
    @CsvSource({"7.5, 17.377667, 19.166338, 11.988612", "6, 17.983171, 20.264444, 12.203355", "5.5556, 18.359675, 20.851993, 12.408420", "10, 17.393590, 18.725828, 12.367415"})
    void a_whole_bake_by_each_rule(double z, double logMean, double trapezoid, double least) {
        assertEquals(logMean, total(with(z, Rule.LOG_MEAN), MINUTES, CELSIUS), 1e-5);
        assertEquals(trapezoid, total(with(z, Rule.TRAPEZOID), MINUTES, CELSIUS), 1e-5);
        assertEquals(least, total(with(z, Rule.LEAST), MINUTES, CELSIUS), 1e-5);
    }

    @Test
    void conservative_floor_and_cap_cut_the_segments() {
        assertEquals(16.490394712, total(new Settings(70, Double.NaN, Rule.LOG_MEAN, true, ALL, NONE, ALL), MINUTES, CELSIUS), 1e-8);
        assertEquals(17.365219519, total(new Settings(70, 7.5, Rule.LOG_MEAN, false, ALL, 55, ALL), MINUTES, CELSIUS), 1e-8);
        assertEquals(17.260687965, total(new Settings(70, 7.5, Rule.LOG_MEAN, false, ALL, 60, ALL), MINUTES, CELSIUS), 1e-8);
        assertEquals(16.595522542, total(new Settings(70, 7.5, Rule.LOG_MEAN, false, ALL, NONE, 71.5), MINUTES, CELSIUS), 1e-8);
        assertEquals(15.705089230, total(new Settings(70, Double.NaN, Rule.LOG_MEAN, true, ALL, 55, 71.5), MINUTES, CELSIUS), 1e-8);
    }

    @Test
    void the_minute_of_a_target_is_found_within_its_segment() {
        Lethality lethality = new Lethality(Settings.of(70, 7.5));
        double[] sums = lethality.cumulative(MINUTES, CELSIUS);
        assertEquals(28.051508261, lethality.reached(2, MINUTES, CELSIUS, sums), 1e-8);
        assertTrue(Double.isNaN(lethality.reached(100, MINUTES, CELSIUS, sums)));
        for (Rule rule : Rule.values()) {
            Lethality by = new Lethality(new Settings(70, 7.5, rule, false, ALL, 55, 71.5));
            double[] all = by.cumulative(MINUTES, CELSIUS);
            double at = by.reached(5, MINUTES, CELSIUS, all);
            assertTrue(at > 28 && at < 34, rule + " " + at);
        }
    }

    @Test
    void a_gap_longer_than_allowed_counts_by_its_cooler_end() {
        Settings gap = new Settings(70, 7.5, Rule.LOG_MEAN, false, 5, NONE, ALL);
        assertEquals(6 * Math.pow(10, -5 / 7.5), total(gap, new double[] {0, 6}, new double[] {65, 75}), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"60, 92.8318", "65, 13.6258", "68, 4.3089"})
    void acmsf_equivalents_with_z_6(double celsius, double minutes) {
        // ACMSF 2007, burgers: 65 °C for 13.6 min and 60 °C for 93 min are worth 2 min at 70 °C with z 6 °C
        assertEquals(minutes, new Lethality(Settings.of(70, 6)).equivalentMinutes(2, celsius), 1e-4);
    }

    @Test
    void z_from_two_published_d_values() {
        // Schuman and Sheldon, J. Food Prot. 60(6), 1997: yolk Salmonella D60 0.28, D62.2 0.087, z printed 4.33
        assertEquals(4.333790, HeatResistance.z(60, 0.28, 62.2, 0.087), 1e-5);
        assertEquals(6.049327, HeatResistance.z(60, 1.34, 62.2, 0.58), 1e-5);
        HeatResistance yolk = HeatResistance.KNOWN.get(0);
        assertEquals(0.087, yolk.dAt(62.2), 1e-3);
        assertThrows(IllegalArgumentException.class, () -> yolk.dAt(70));
    }

    @Property
    void splitting_a_segment_changes_nothing(@ForAll @DoubleRange(min = 40, max = 90) double from, @ForAll @DoubleRange(min = 40, max = 90) double to,
            @ForAll @DoubleRange(min = 0.05, max = 0.95) double at) {
        double whole = total(Settings.of(70, 7.5), new double[] {0, 10}, new double[] {from, to});
        double halves = total(Settings.of(70, 7.5), new double[] {0, 10 * at, 10}, new double[] {from, from + at * (to - from), to});
        assertEquals(1, halves / whole, 1e-12);
    }

    @Property
    void trapezoid_log_mean_least_and_hotter_never_kills_less(@ForAll @Size(8) double[] seeds, @ForAll @DoubleRange(min = 0, max = 5) double hotter) {
        double[] minutes = new double[seeds.length];
        double[] celsius = new double[seeds.length];
        double[] warmer = new double[seeds.length];
        for (int i = 0; i < seeds.length; i++) {
            minutes[i] = 3 * i;
            celsius[i] = 50 + 30 * Math.abs(Math.sin(seeds[i]));
            warmer[i] = celsius[i] + hotter;
        }
        double exact = total(with(7.5, Rule.LOG_MEAN), minutes, celsius);
        assertTrue(total(with(7.5, Rule.TRAPEZOID), minutes, celsius) >= exact * (1 - 1e-12));
        assertTrue(exact >= total(with(7.5, Rule.LEAST), minutes, celsius) * (1 - 1e-12));
        assertTrue(total(with(7.5, Rule.LOG_MEAN), minutes, warmer) >= exact * (1 - 1e-12));
    }

    @Test
    void quadrature_agrees_with_the_exact_rule() {
        var integrator = new IterativeLegendreGaussIntegrator(5, 1e-12, 1e-12);
        double by = integrator.integrate(100_000, t -> Math.pow(10, (60 + t - 70) / 7.5), 0, 12);
        assertEquals(by, total(Settings.of(70, 7.5), new double[] {0, 12}, new double[] {60, 72}), 1e-9);
    }

    @Property(tries = 5_000)
    void the_exponential_is_that_of_java(@ForAll @DoubleRange(min = -720, max = 700) double x) {
        assertEquals(Math.exp(x), Exp.exp(x), 1.5 * Math.ulp(Math.exp(x)));
    }
}
