package trivet.growth;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.LocalDate;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trivet.growth.GrowthModel.Conditions;

/** Growth against a public agency's published prediction, published rates, an ODE solver, and values computed with SciPy 1.17. */
class GrowthTest {

    private static final double[] HOURS = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12};
    private static final double[] COOLING = {54.59, 45.99, 38.94, 32.92, 27.86, 23.43, 19.89, 16.71, 14.14, 11.94, 10.13, 8.48, 7.21};

    private static double[] logs(String model, Conditions conditions, double[] hours, double[] celsius, double start, double max) {
        Growth growth = new Growth(GrowthModel.of(model), conditions, true);
        double[] integrals = growth.integrals(hours, celsius);
        double[] logs = new double[integrals.length];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = growth.log(integrals[i], start, max);
        }
        return logs;
    }

    @Test
    void bacillus_cereus_in_cooling_rice_as_the_agency_printed_it() {
        // USDA-ARS predictive page for B. cereus in cooked rice, after Juneja et al., IJFM 290 (2019): 13 rows, N0 2.00, printed to two digits
        double[] printed = {2.00, 2.00, 2.06, 2.33, 2.81, 3.22, 3.49, 3.65, 3.73, 3.77, 3.78, 3.78, 3.78};
        double[] logs = logs("b-cereus-cooked-rice", Conditions.NONE, HOURS, COOLING, 2, 8.03);
        for (int i = 0; i < printed.length; i++) {
            assertEquals(printed[i], logs[i], 0.0051, "hour " + i);
        }
    }

    @Test
    void profiles_of_the_cooling_options() throws Exception {
        JsonNode checks = new ObjectMapper().readTree(GrowthTest.class.getResourceAsStream("/growth-checks.json"));
        Map<String, String> models = Map.of("CPB", "c-perfringens-beef", "CPC", "c-perfringens-chicken", "BC", "b-cereus-cooked-rice", "SE", "salmonella-egg-mix", "SA", "s-aureus-broth");
        models.forEach((name, id) -> checks.path("expected").path(name).fields().forEachRemaining(profile -> {
            JsonNode knots = checks.path("profiles").path(profile.getKey());
            double[] hours = numbers(knots.path("t_h"));
            double[] celsius = numbers(knots.path("T_C"));
            Growth growth = new Growth(GrowthModel.of(id), Conditions.NONE, true);
            double[] integrals = growth.integrals(hours, celsius);
            double last = integrals[integrals.length - 1];
            assertEquals(1, last / profile.getValue().path("M").asDouble(), 1e-9, name + " " + profile.getKey());
            assertEquals(profile.getValue().path("growth_log10_N0_2_Nmax_8").asDouble(), growth.log(last, 2, 8) - 2, 1e-8, name + " " + profile.getKey());
        }));
    }

    private static double[] numbers(JsonNode list) {
        double[] values = new double[list.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = list.get(i).asDouble();
        }
        return values;
    }

    @Test
    void clostridium_perfringens_stays_near_one_log_on_the_published_cooling_limit() {
        // FSIS-GD-2021-13, option 1: 54.4 to 26.7 °C in 1.5 h, to 4.4 °C in 5 h more, at most 1 log
        double[] logs = logs("c-perfringens-chicken", Conditions.NONE, new double[] {0, 1.5, 6.5}, new double[] {54.4, 26.7, 4.4}, 2, 8);
        assertEquals(0.99895, logs[2] - 2, 1e-5);
    }

    @ParameterizedTest
    @CsvSource({"b-cereus-cooked-rice, 10, .007534", "b-cereus-cooked-rice, 37, 2.084963", "s-aureus-broth, 15, .138449", "s-aureus-broth, 45, 1.292072", "salmonella-egg-mix, 25, .681097",
        "c-perfringens-beef, 45, 5.949841"})
    void rates_at_single_temperatures(String model, double celsius, double rate) {
        assertEquals(rate, new Growth(GrowthModel.of(model), Conditions.NONE, true).rate(celsius), 1e-6);
    }

    @Test
    void models_that_need_acid_water_and_salt() {
        Conditions salted = new Conditions(6.2, Double.NaN, 1.0);
        double[] logs = logs("c-perfringens-bulk-meat", salted, new double[] {0, 1.5, 6.5}, new double[] {54.4, 26.7, 4.4}, 2, 8);
        assertEquals(2.37407018, logs[2] - 2, 1e-7);
        Conditions quiche = new Conditions(6.5, 0.99, Double.NaN);
        assertEquals(1.55361557, last("l-monocytogenes-dairy", quiche), 1e-7);
        Growth rte = new Growth(GrowthModel.of("l-monocytogenes-rte"), quiche, true);
        double[][] rows = {{3, .01552741}, {5, .02800821}, {7, .04414371}, {8, .05358198}, {12, .10047179}};
        for (double[] row : rows) {
            assertEquals(row[1], rte.rate(row[0]), 1e-7);
        }
        assertEquals(.02421383, new Growth(GrowthModel.of("l-monocytogenes-rte"), new Conditions(6.0, 0.985, Double.NaN), true).rate(5), 1e-7);
    }

    private static double last(String model, Conditions conditions) {
        double[] integrals = new Growth(GrowthModel.of(model), conditions, true).integrals(new double[] {0, 1.5, 6.5}, new double[] {54.4, 26.7, 4.4});
        return integrals[2];
    }

    @Test
    void listeria_growth_rows_of_the_risk_assessment() {
        // FDA/FSIS 2003, appendix 8: square-root scaling with Tmin −1.18 °C, EGR at 5 °C in log10 per day from growth at another temperature
        double[][] rows = {{8, 5.4, 21, 0.116}, {4, 2.1, 28, 0.107}, {8, 4.6, 14, 0.149}, {4, 2.0, 21, 0.136}, {4, 3.9, 28, 0.198}, {5, 4, 50, 0.080}, {10, 4.5, 15, 0.092}};
        for (double[] row : rows) {
            RateCurve curve = new RateCurve.SquareRoot(row[3] / (6.18 * 6.18), -1.18, 25);
            assertEquals(row[1], curve.rate(row[0]) * row[2], row[1] * 0.006);
        }
    }

    @Test
    void the_closed_form_is_the_solution_of_the_differential_equations() {
        Growth growth = new Growth(GrowthModel.of("b-cereus-cooked-rice"), Conditions.NONE, true);
        double max = Math.log(Math.pow(10, 8.03));
        OrdinaryDifferentialEquation equations = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 2;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                int i = Math.min(11, (int) t);
                double mu = growth.rate(COOLING[i] + (COOLING[i + 1] - COOLING[i]) * (t - i));
                double q = Math.exp(y[0]);
                return new double[] {mu, mu * q / (1 + q) * (1 - Math.exp(y[1] - max))};
            }
        };
        double[] state = {Math.log(1 / Math.expm1(4.1)), Math.log(100)};
        for (int hour = 0; hour < 12; hour++) {
            state = new DormandPrince853Integrator(1e-6, 0.05, 1e-12, 1e-12).integrate(equations, new ODEState(hour, state), hour + 1 - 1e-12).getPrimaryState();
        }
        assertEquals(logs("b-cereus-cooked-rice", Conditions.NONE, HOURS, COOLING, 2, 8.03)[12], state[1] / Math.log(10), 1e-6);
    }

    @Property(tries = 200)
    void the_integral_is_that_of_quadrature_and_splits(@ForAll @DoubleRange(min = 12, max = 44) double from, @ForAll @DoubleRange(min = 12, max = 44) double to) {
        for (String id : new String[] {"b-cereus-cooked-rice", "s-aureus-broth", "c-perfringens-chicken"}) {
            Growth growth = new Growth(GrowthModel.of(id), Conditions.NONE, false);
            double closed = growth.integrals(new double[] {0, 2}, new double[] {from, to})[1];
            double by = new IterativeLegendreGaussIntegrator(12, 1e-10, 1e-12).integrate(100_000, t -> growth.rate(from + (to - from) * t / 2), 0, 2);
            assertEquals(by, closed, 1e-7 * Math.max(1, by));
            double split = growth.integrals(new double[] {0, 1, 2}, new double[] {from, (from + to) / 2, to})[2];
            assertEquals(closed, split, 1e-7 * Math.max(1, by));
        }
    }

    @Property
    void growth_never_falls_with_time(@ForAll @DoubleRange(min = -5, max = 60) double from, @ForAll @DoubleRange(min = -5, max = 60) double to) {
        for (GrowthModel model : GrowthModel.ALL) {
            Growth growth = new Growth(model, new Conditions(6.1, 0.99, 1), true);
            double[] integrals = growth.integrals(new double[] {0, 1, 2}, new double[] {from, to, from});
            assertTrue(integrals[1] >= 0 && integrals[2] >= integrals[1], model.id());
        }
    }

    @Test
    void shelf_life_sampling_and_dates() {
        double rate = new Growth(GrowthModel.of("l-monocytogenes-rte"), new Conditions(6.5, 0.99, Double.NaN), true).rate(5);
        assertEquals(1.7127, ShelfLife.days(rate, 0.5), 1e-4);
        assertEquals(6.8509, ShelfLife.days(rate, 2), 1e-4);
        assertEquals(.773781, ShelfLife.acceptance(5, 0, .05), 1e-6);
        assertEquals(.722461, ShelfLife.acceptance(5, 2, .2, .05), 1e-6);
        assertEquals(.466560, ShelfLife.acceptance(5, 2, .3, .1), 1e-6);
        assertEquals(59, ShelfLife.samplesToDetect(.95, .05));
        assertEquals(299, ShelfLife.samplesToDetect(.95, .01));
        assertEquals(.450720, ShelfLife.upperBoundNoneOf(5), 1e-6);
        assertEquals(LocalDate.of(2028, 3, 1), ShelfLife.useBy(LocalDate.of(2028, 2, 27), 3));
        assertEquals(LocalDate.of(2027, 3, 2), ShelfLife.useBy(LocalDate.of(2027, 2, 27), 3));
        assertTrue(ShelfLife.cannotSupportListeria(4.4, 0.99, 30));
    }
}
