package trivet.excursion;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import trivet.excursion.TimeAbove.Excursion;

/** Time above a limit against values computed by hand and with SciPy 1.17. */
class TimeAboveTest {

    private static final double[] MINUTES = {0, 10, 25, 30, 50, 65, 70, 130, 140};
    private static final double[] CELSIUS = {4.0, 4.6, 6.2, 7.4, 8.8, 6.0, 4.4, 4.2, 5.5};

    @Test
    void irregular_readings() {
        TimeAbove five = TimeAbove.of(5, Double.POSITIVE_INFINITY, MINUTES, CELSIUS);
        assertEquals(58.221153846, five.minutesAbove(), 1e-9);
        assertEquals(116.274038462, five.degreeMinutes(), 1e-9);
        TimeAbove eight = TimeAbove.of(8, Double.POSITIVE_INFINITY, MINUTES, CELSIUS);
        assertEquals(15.714285714, eight.minutesAbove(), 1e-9);
        assertEquals(6.285714286, eight.degreeMinutes(), 1e-9);
        assertEquals(60, TimeAbove.of(5, 30, MINUTES, CELSIUS).unknownMinutes(), 1e-12);
        assertEquals(0, TimeAbove.of(5, 30, new double[] {0, 10}, new double[] {5, 5}).minutesAbove(), "strictly above");
    }

    @Test
    void an_excursion_opens_and_closes_with_delay() {
        double[] celsius = {4, 4.1, 4.3, 5.2, 5.6, 6.1, 6.4, 5.9, 5.3, 4.9, 4.6, 4.4, 4.3, 4.2, 4.2, 5.4, 5.8, 4.8, 4.4, 4.2, 4.1, 4, 4, 4, 4};
        double[] minutes = new double[celsius.length];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = 5 * i;
        }
        assertEquals(List.of(new Excursion(15, 55)), TimeAbove.excursions(minutes, celsius, 5, 15, 4.5, 10));
    }

    @Test
    void mean_kinetic_temperature() {
        // USP 1160: ΔH/R 10,000 K
        assertEquals(25.858208, TimeAbove.meanKinetic(new double[] {20, 25, 30}, new double[] {1, 1, 1}), 1e-6);
        assertEquals(7.756422, TimeAbove.meanKinetic(new double[] {5, 25}, new double[] {23, 1}), 1e-6);
    }
}
