package trivet.instrument;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trivet.instrument.Conformance.Outcome;

/** Boiling water, budgets of uncertainty and conformance against their published tables. */
class InstrumentTest {

    @ParameterizedTest
    @CsvSource({"0.1, 372.755919", "1, 453.035632", "10, 584.149488"})
    void saturation_temperatures_of_iapws_table_36(double megapascal, double kelvin) {
        // IAPWS R7-97 (2012), table 36
        assertEquals(kelvin, BoilingPoint.kelvin(megapascal), 5e-7);
    }

    @ParameterizedTest
    @CsvSource({"300, 0.00353658941", "500, 2.63889776", "600, 12.3443146"})
    void saturation_pressures_of_iapws_table_35(double kelvin, double megapascal) {
        // IAPWS R7-97 (2012), table 35
        assertEquals(1, BoilingPoint.megapascal(kelvin) / megapascal, 2e-9);
    }

    @ParameterizedTest
    @CsvSource({"0, 1013.250, 99.9743", "250, 983.575, 99.1436", "500, 954.608, 98.3125", "1000, 898.746, 96.6488", "1500, 845.560, 94.9830", "2000, 794.952, 93.3151"})
    void altitude_gives_pressure_and_boiling_point(double metres, double hectopascal, double celsius) {
        assertEquals(hectopascal, BoilingPoint.pressure(metres), 5e-4);
        assertEquals(celsius, BoilingPoint.celsius(BoilingPoint.pressure(metres)), 5e-5);
        assertThrows(IllegalArgumentException.class, () -> BoilingPoint.pressure(20_000));
    }

    @Test
    void a_budget_adds_as_squares() {
        double u = new Uncertainty().addResolution(.1).addResolution(.1).addHalfWidth(.15).addExpanded(.2, 2).standard();
        assertEquals(0.13844373, u, 1e-8);
    }

    @ParameterizedTest
    @CsvSource({".1, .7, .998650", ".2, .8, .841345", ".3, .7, .841345", ".3, 1.2, .252493", ".5, .3, .914582"})
    void conformance_within_one_degree(double u, double value, double probability) {
        Conformance c = Conformance.of(value, u, -1, 1, 1.645);
        assertEquals(probability, c.probability(), 1e-6);
        assertEquals(1 - 1.645 * u, c.acceptUpper(), 1e-12);
    }

    @Test
    void the_guides_zener_diode() {
        // JCGM 106:2012: y −5.47, u 0.05, upper limit −5.40 gives 0.92 (from memory)
        assertEquals(0.919243, Conformance.of(-5.47, .05, Double.NaN, -5.40, 1.645).probability(), 1e-6);
        assertEquals(Outcome.ADJUST, Conformance.of(-5.47, .05, Double.NaN, -5.40, 1.645).outcome());
        assertEquals(Outcome.PASS, Conformance.of(0.1, .1, -1, 1, 1.645).outcome());
        assertEquals(Outcome.FAIL, Conformance.of(1.2, .3, -1, 1, 1.645).outcome());
    }

    @Test
    void a_probe_that_is_off_by_nearly_its_tolerance_is_to_be_adjusted() {
        assertEquals(Outcome.PASS, ProbeResult.of(0.3, -1, 1).conformance().outcome());
        assertEquals(Outcome.ADJUST, ProbeResult.of(0.95, -1, 1).conformance().outcome());
        assertEquals(Outcome.FAIL, ProbeResult.of(1.1, -1, 1).conformance().outcome());
    }
}
