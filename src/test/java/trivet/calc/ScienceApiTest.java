package trivet.calc;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trivet.FreshDemo;

/** The models' API: the shapes of its answers, and its refusals. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class ScienceApiTest {

    private static ValidatableResponse post(String path, String body) {
        return given().contentType(ContentType.JSON).body(body).post("/api/calc/" + path).then();
    }

    private static JsonPath ok(String path, String body) {
        return new JsonPath(post(path, body).statusCode(200).body("cautions", hasSize(org.hamcrest.Matchers.greaterThan(0))).body("source", not(equalTo("")))
                .body(not(containsString("NaN"))).extract().asString());
    }

    @Test
    void lethality() {
        JsonPath answer = ok("lethality", "{\"reference_celsius\":70,\"z_celsius\":7.5,\"rule\":\"log-mean\",\"mode\":null,\"longest_gap_minutes\":null,\"floor_celsius\":null,\"cap_celsius\":null,"
                + "\"targets\":[2.0,9],\"readings\":[{\"minute\":12,\"celsius\":\"72\"},{\"minute\":0,\"celsius\":60}]}");
        assertEquals(5.867646047, answer.getDouble("minutes_at_reference"), 1e-6);
        assertEquals(0, answer.getDouble("cumulative[0]"), 0);
        assertTrue(answer.getDouble("reached[0].minute") > 8);
        assertEquals((Object) null, answer.get("reached[1].minute"));
        ok("lethality", "{\"reference_celsius\":70,\"z_celsius\":null,\"mode\":\"conservative\",\"readings\":[{\"minute\":0,\"celsius\":60},{\"minute\":12,\"celsius\":72}]}");
    }

    @Test
    void readings_in_fahrenheit_give_the_same() {
        JsonPath celsius = ok("time-above", "{\"limit_celsius\":5,\"readings\":[{\"minute\":0,\"celsius\":0},{\"minute\":10,\"celsius\":10}]}");
        JsonPath fahrenheit = ok("time-above", "{\"limit_celsius\":5,\"readings\":[{\"minute\":0,\"fahrenheit\":32},{\"minute\":10,\"fahrenheit\":50}]}");
        assertEquals(celsius.getDouble("minutes_above"), fahrenheit.getDouble("minutes_above"), 1e-9);
    }

    @Test
    void forecast() {
        JsonPath answer = ok("cooling-forecast", "{\"air_celsius\":3,\"air_sd\":null,\"sigma\":0.5,\"level\":0.95,\"prior\":{\"ln_tau_mean\":4.317488,\"ln_tau_sd\":0.25},"
                + "\"targets\":[{\"celsius\":8,\"limit_minutes\":150}],\"readings\":[{\"minute\":0,\"celsius\":72.0},{\"minute\":10,\"celsius\":61.5}]}");
        assertEquals(161.328031, answer.getDouble("targets[0].eta_minutes"), 1e-3);
        assertEquals(0.8697273, answer.getDouble("targets[0].probability_late"), 1e-5);
        JsonPath never = ok("cooling-forecast", "{\"air_celsius\":12,\"air_sd\":0.5,\"sigma\":0.5,\"level\":0.95,\"prior\":{\"ln_tau_mean\":4.3,\"ln_tau_sd\":0.25},"
                + "\"targets\":[{\"celsius\":8,\"limit_minutes\":150}],\"readings\":[{\"minute\":0,\"celsius\":72.0}]}");
        assertEquals((Object) null, never.get("targets[0].eta_minutes"));
    }

    @Test
    void growth_and_shelf_life() {
        given().get("/api/calc/growth/models").then().statusCode(200).body("id", hasItems("b-cereus-cooked-rice", "c-perfringens-chicken", "c-perfringens-beef", "c-perfringens-bulk-meat",
                "salmonella-egg-mix", "s-aureus-broth", "l-monocytogenes-rte", "l-monocytogenes-dairy", "b-cereus-milk")).body("[0].range_celsius", hasSize(2));
        JsonPath answer = ok("growth", "{\"model\":\"c-perfringens-chicken\",\"start_log\":2.0,\"max_log\":8,\"lag\":true,\"knots\":[{\"hour\":0,\"celsius\":54.4},{\"hour\":1.5,\"celsius\":26.7},{\"hour\":6.5,\"celsius\":4.4}]}");
        assertEquals(0.99894896, answer.getDouble("growth_log"), 1e-6);
        assertEquals(6.76252743, answer.getDouble("integral"), 1e-5);
        assertEquals(2.0, answer.getDouble("at[0].log"), 1e-12);
        assertTrue(answer.getString("cautions").contains("no growth"));
        JsonPath life = ok("shelf-life", "{\"model\":\"l-monocytogenes-rte\",\"celsius\":5,\"ph\":6.5,\"water_activity\":0.99,\"growth_logs\":[0.5,2]}");
        assertEquals(.02800821, life.getDouble("rate_per_hour"), 1e-8);
        assertEquals(6.8509, life.getDouble("days[1]"), 1e-4);
    }

    @Test
    void instruments_charts_and_time_above() {
        assertEquals(94.9830, ok("boiling-point", "{\"altitude_m\":1500}").getDouble("celsius"), 5e-5);
        assertEquals(94.9830, ok("boiling-point", "{\"pressure_hpa\":845.56}").getDouble("celsius"), 5e-5);
        JsonPath chart = ok("control-chart", "{\"chart\":\"individuals\",\"values\":[49.6,47.6,49.9,51.3,47.8,51.2,52.6,52.4,53.6,52.1],\"parameters\":{\"d2\":1.128}}");
        assertEquals(55.8041, chart.getDouble("upper"), 5e-5);
        assertEquals(0, chart.getList("signals").size());
        ok("control-chart", "{\"chart\":\"ewma\",\"values\":[52.0,47.0],\"parameters\":{\"lambda\":0.3,\"target\":50,\"sd\":2.0539,\"width\":3,\"limits\":\"asymptotic\"}}");
        JsonPath cusum = ok("control-chart", "{\"chart\":\"cusum\",\"values\":[1,1,9],\"parameters\":{\"target\":1,\"allowance\":0.5,\"decision\":4}}");
        assertEquals(3, cusum.getInt("signals[0].index"));
        JsonPath conformance = ok("conformance", "{\"value\":0.7,\"standard_uncertainty\":0.3,\"lower\":-1,\"upper\":1,\"coverage\":1.645}");
        assertEquals(.841345, conformance.getDouble("probability"), 1e-6);
        post("conformance", "{\"value\":0.7,\"standard_uncertainty\":0.3,\"lower\":null,\"upper\":1}").statusCode(200).body("accept_lower", nullValue());
        JsonPath above = ok("time-above", "{\"limit_celsius\":5,\"longest_gap_minutes\":30,\"readings\":[{\"minute\":0,\"celsius\":4},{\"minute\":10,\"celsius\":6},{\"minute\":70,\"celsius\":4}]}");
        assertEquals(5, above.getDouble("minutes_above"), 1e-12);
        assertEquals(60, above.getDouble("unknown_minutes"), 1e-12);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "lethality | {\"z_celsius\":0,\"readings\":[{\"minute\":0,\"celsius\":60},{\"minute\":1,\"celsius\":70}]} | 422 | z_celsius",
        "lethality | {\"readings\":[{\"minute\":0,\"celsius\":60}]} | 422 | readings",
        "lethality | {\"readings\":[{\"minute\":0,\"celsius\":60},{\"minute\":0,\"celsius\":61}]} | 422 | readings[1].minute",
        "lethality | {\"readings\":[{\"minute\":0,\"celsius\":60},{\"minute\":\"NaN\",\"celsius\":61}]} | 422 | readings[1].minute",
        "lethality | {\"readings\":[{\"minute\":0,\"celsius\":1e999},{\"minute\":1,\"celsius\":61}]} | 422 | readings[0].celsius",
        "lethality | {\"readings\":[{\"minute\":0,\"celsius\":60},{\"minute\":1,\"celsius\":1e300}]} | 422 | readings",
        "lethality | {\"readings\":[]} | 422 | readings",
        "lethality | {} | 400 | readings",
        "lethality | {\"reading\":[]} | 400 | reading",
        "lethality | {\"mode\":\"conservative\",\"z_celsius\":7.5,\"readings\":[{\"minute\":0,\"celsius\":60},{\"minute\":1,\"celsius\":70}]} | 422 | z_celsius",
        "cooling-forecast | {\"air_celsius\":8,\"targets\":[{\"celsius\":8}],\"prior\":{\"ln_tau_mean\":4.3,\"ln_tau_sd\":0.3},\"readings\":[{\"minute\":0,\"celsius\":60}]} | 422 | targets[0].celsius",
        "cooling-forecast | {\"air_celsius\":3,\"targets\":[{\"celsius\":8}],\"readings\":[{\"minute\":0,\"celsius\":60}]} | 422 | readings",
        "cooling-forecast | {\"air_celsius\":3,\"sigma\":0,\"targets\":[{\"celsius\":8}],\"prior\":{\"ln_tau_mean\":4.3,\"ln_tau_sd\":0.3},\"readings\":[{\"minute\":0,\"celsius\":60}]} | 422 | sigma",
        "growth | {\"model\":\"no-such\",\"knots\":[{\"hour\":0,\"celsius\":5},{\"hour\":1,\"celsius\":5}]} | 422 | model",
        "growth | {\"model\":\"l-monocytogenes-rte\",\"knots\":[{\"hour\":0,\"celsius\":5},{\"hour\":1,\"celsius\":5}]} | 422 | ",
        "growth | {\"model\":\"l-monocytogenes-rte\",\"ph\":6,\"water_activity\":0.98,\"knots\":[{\"hour\":0,\"celsius\":25.1},{\"hour\":1,\"celsius\":5}]} | 422 | knots",
        "growth | {\"model\":\"c-perfringens-bulk-meat\",\"ph\":7,\"salt_percent\":1,\"knots\":[{\"hour\":0,\"celsius\":5},{\"hour\":1,\"celsius\":5}]} | 422 | salt_percent",
        "boiling-point | {} | 400 | altitude_m",
        "boiling-point | {\"altitude_m\":20000} | 422 | altitude_m",
        "boiling-point | {\"pressure_hpa\":-1} | 422 | pressure_hpa",
        "control-chart | {\"chart\":\"individuals\",\"values\":[1]} | 422 | values",
        "control-chart | {\"chart\":\"pie\",\"values\":[1,2]} | 422 | chart",
        "control-chart | {\"chart\":\"ewma\",\"values\":[1,2],\"parameters\":{\"lambda\":2,\"target\":1,\"sd\":1}} | 422 | parameters",
        "conformance | {\"value\":1,\"standard_uncertainty\":0,\"upper\":1} | 422 | standard_uncertainty",
        "conformance | {\"value\":1,\"standard_uncertainty\":1} | 422 | lower",
        "time-above | {\"limit_celsius\":5,\"readings\":[{\"minute\":0,\"celsius\":5}]} | 422 | readings"})
    void bad_input_is_refused_with_the_field_and_never_a_nan(String path, String body, int status, String field) {
        ValidatableResponse answer = post(path.strip(), body).statusCode(status).contentType("application/problem+json");
        if (field != null) {
            answer.body("errors[0].field", equalTo(field.strip()));
        }
    }

    @Test
    void a_tree_and_the_matrix_answer_as_published() {
        post("control-point", "{\"tree\":\"codex-2022\",\"answers\":{\"q1\":\"no\",\"q2\":\"yes\",\"q3\":\"no\",\"q4\":\"yes\"}}").statusCode(200)
                .body("outcome", equalTo("ccp")).body("path", equalTo(java.util.List.of("q1", "q2", "q3", "q4"))).body("asks", nullValue()).body("reason", org.hamcrest.Matchers.startsWith("CCP"));
        post("control-point", "{\"tree\":\"codex-2003\",\"answers\":{\"q1\":\"no\"}}").statusCode(200).body("outcome", nullValue()).body("asks", equalTo("q1a"));
        post("risk-level", "{\"matrix\":\"eu-notice-2022\",\"probability\":3,\"effect\":4}").statusCode(200).body("level", equalTo(6)).body("route", equalTo("control-point"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "control-point | {\"tree\":\"codex-2022\",\"answers\":{\"q1\":\"yes\",\"q2\":\"yes\"}} | 422 | answers.q2",
        "control-point | {\"tree\":\"codex-2022\",\"answers\":{\"q1\":\"perhaps\"}} | 422 | answers.q1",
        "control-point | {\"tree\":\"codex-2022\",\"answers\":{\"q9\":\"no\"}} | 422 | answers.q9",
        "control-point | {\"tree\":\"codex-2022\",\"answers\":{\"q1\":true}} | 400 | answers.q1",
        "control-point | {\"tree\":\"codex-1997\",\"answers\":{}} | 422 | tree",
        "control-point | {\"tree\":\"codex-2022\"} | 400 | answers",
        "risk-level | {\"matrix\":\"eu-notice-2022\",\"probability\":0,\"effect\":4} | 422 | probability",
        "risk-level | {\"matrix\":\"eu-notice-2022\",\"probability\":2,\"effect\":2.5} | 422 | effect",
        "risk-level | {\"matrix\":\"other\",\"probability\":2,\"effect\":2} | 422 | matrix",
        "risk-level | {\"matrix\":\"eu-notice-2022\",\"probability\":2} | 400 | effect"})
    void a_tree_or_matrix_refuses_with_the_field(String path, String body, int status, String field) {
        post(path.strip(), body).statusCode(status).contentType("application/problem+json").body("errors[0].field", equalTo(field.strip()));
    }
}
