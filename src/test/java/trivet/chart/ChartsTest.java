package trivet.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Control charts against the worked examples of the NIST/SEMATECH e-Handbook 6.3.2. */
class ChartsTest {

    private static final double[] FLOW = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};

    private static List<Signal> signals(double[] values, String rule) {
        return IndividualsChart.of(values, IndividualsChart.D2, Set.of(rule), Set.of()).signals();
    }

    @Test
    void flow_rate_by_individuals() {
        // NIST/SEMATECH e-Handbook 6.3.2.2: centre 50.81, limits 55.8041 and 45.8159, moving range 1.8778, its limit 6.1347
        IndividualsChart chart = IndividualsChart.of(FLOW, 1.128, Set.copyOf(IndividualsChart.USUAL), Set.of());
        assertEquals(50.81, chart.centre(), 1e-9);
        assertEquals(55.8041, chart.upper(), 5e-5);
        assertEquals(45.8159, chart.lower(), 5e-5);
        assertEquals(1.8778, chart.movingRangeMean(), 5e-5);
        assertEquals(6.1347, chart.movingRangeUpper(), 5e-5);
        assertTrue(chart.signals().isEmpty());
        assertEquals(55.802412, IndividualsChart.of(FLOW, IndividualsChart.D2, Set.of(), Set.of()).upper(), 1e-6);
    }

    @Test
    void a_break_ends_a_run_and_its_jump_is_no_moving_range() {
        double[] values = {1, 2, 1, 2, 1, 2, 1, 2, 9, 9.1, 9, 9.1, 9, 9.1, 9, 9.1, 9};
        IndividualsChart whole = IndividualsChart.of(values, IndividualsChart.D2, Set.of("nine-one-side"), Set.of());
        assertEquals(List.of(new Signal("nine-one-side", 17)), whole.signals());
        IndividualsChart broken = IndividualsChart.of(values, IndividualsChart.D2, Set.of("nine-one-side"), Set.of(8, 12));
        assertEquals(List.of(), broken.signals());
        assertEquals((7 * 1 + 7 * 0.1) / 14, broken.movingRangeMean(), 1e-12);
    }

    @Test
    void ewma_of_the_handbook() {
        // NIST/SEMATECH e-Handbook 6.3.2.4
        double[] values = {52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};
        double[] printed = {50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99};
        EwmaChart chart = EwmaChart.of(values, .3, 50, 2.0539, 3, false);
        assertArrayEquals(printed, chart.points(), 0.0051);
        assertEquals(52.588432, chart.upper()[0], 1e-6);
        assertEquals(47.411568, chart.lower()[19], 1e-6);
        EwmaChart exact = EwmaChart.of(values, .3, 50, 2.0539, 3, true);
        assertArrayEquals(new double[] {51.848510, 52.256394, 52.431406, 52.512715, 52.551611}, java.util.Arrays.copyOf(exact.upper(), 5), 1e-6);
        assertTrue(chart.signals().isEmpty());
    }

    @Test
    void cusum_of_the_handbook_signals_at_the_fourteenth_group() {
        // NIST/SEMATECH e-Handbook 6.3.2.3, data, k and h from memory: target 325, allowance 0.3175, decision 4.1959
        double[] values = {324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600, 324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350};
        CusumChart chart = CusumChart.of(values, 325, .3175, 4.1959);
        assertEquals(List.of(new Signal("high", 14)), chart.signals());
    }

    @Test
    void a_run_rule_names_the_point_that_completes_it() {
        double[] rising = {1, 2, 3, 4, 5, 6, 7};
        assertEquals(List.of(new Signal("six-trending", 6)), signals(rising, "six-trending"));
        double[] high = {0, 0, 0, 0, 0, 0, 0, 0, 0, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5};
        assertTrue(signals(high, "nine-one-side").contains(new Signal("nine-one-side", 18)));
        double[] zigzag = {1, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1};
        assertEquals(List.of(new Signal("fourteen-alternating", 14)), signals(zigzag, "fourteen-alternating"));
        double[] spike = {5, 5.1, 4.9, 5, 5.1, 4.9, 5, 5.1, 4.9, 9};
        assertEquals(List.of(new Signal("beyond-limit", 10)), signals(spike, "beyond-limit"));
    }

    @Test
    void no_range_is_built_over_a_break() {
        double mean = IndividualsChart.of(new double[] {1, 2, 9, 10}, IndividualsChart.D2, Set.of(), Set.of(2)).movingRangeMean();
        assertEquals(1, mean, 1e-12);
    }

    @Test
    void capability_against_one_or_two_limits() {
        // NIST/SEMATECH e-Handbook 6.1.6, from memory: USL 20, LSL 8, mean 16, sigma 2 gives Cpk 0.6667
        assertEquals(0.6667, IndividualsChart.capability(16, 2, 8, 20), 5e-5);
        assertEquals(1.582077, IndividualsChart.capability(3.16666667, 0.38627153, Double.NaN, 5), 1e-5);
    }
}
