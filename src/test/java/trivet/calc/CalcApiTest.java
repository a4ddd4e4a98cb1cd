package trivet.calc;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trivet.FreshDemo;

/** The pure calculations over HTTP: the worked examples, and every way to be refused. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class CalcApiTest {

    private static ValidatableResponse post(String path, String body) {
        return given().contentType("application/json").body(body).post("/api/calc/" + path).then();
    }

    @Test
    void the_worked_cooling_of_the_food_code() {
        post("cooling-verdict", "{\"rulebook\":\"us-food-code-2022\",\"out_of_oven_minute\":0,\"as_of_minute\":350,\"readings\":[{\"minute\":0,\"celsius\":\"63.0\"},"
                + "{\"minute\":110,\"celsius\":\"20.6\"},{\"minute\":350,\"celsius\":4.8}]}").statusCode(200).body("verdict", equalTo("within"))
                .body("stages[0].from_celsius", equalTo("57")).body("stages[0].to_celsius", equalTo("21")).body("stages[0].limit_minutes", equalTo(120))
                .body("stages[0].counted_from", equalTo("start")).body("stages[0].clock_minute", equalTo(0)).body("stages[0].latest_clock_minute", equalTo(0))
                .body("stages[0].deadline_minute", equalTo(120)).body("stages[0].reached_minute", equalTo(110)).body("stages[0].verdict", equalTo("within"))
                .body("stages[0].reason", nullValue()).body("stages[0].minutes_left", nullValue()).body("stages[0].standing", equalTo("law")).body("stages[0].words", notNullValue());
    }

    @Test
    void the_worked_cook() {
        post("cook-verdict", "{\"rulebook\":\"england-wales-ni\",\"limit\":\"core-cook\",\"food\":null,\"pieces\":[{\"celsius\":\"76.1\",\"held_seconds\":30},"
                + "{\"celsius\":\"74.9\",\"held_seconds\":30}]}").statusCode(200).body("verdict", equalTo("breached")).body("deciding_piece", equalTo(2))
                .body("row", nullValue()).body("short_by_celsius", equalTo("0.1")).body("short_by_seconds", equalTo(90));
        post("cook-verdict", "{\"rulebook\":\"england-wales-ni\",\"pieces\":[{\"celsius\":\"75,0\",\"held_seconds\":30}]}").body("row.celsius", equalTo("75")).body("row.seconds", equalTo(30));
    }

    @Test
    void rulebooks_are_listed_and_shown() {
        given().get("/api/rulebooks").then().statusCode(200).body("id", contains("england-wales-ni", "scotland", "ireland", "eu", "us-food-code-2022", "australia", "canada", "strictest"));
        given().get("/api/rulebooks/us-food-code-2022").then().statusCode(200).body("foods", hasItems("egg-mix", "fish")).body("limits.id", hasItems("cooling", "core-cook"))
                .body("limits.find { it.id == 'cooling' }.standing", equalTo("law")).body("limits.find { it.id == 'cooling' }.shape", equalTo("stages"));
        given().get("/api/rulebooks/atlantis").then().statusCode(404).contentType("application/problem+json");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "400 | {",
        "400 | []",
        "400 | {\"rulebook\":\"eu\"}",
        "400 | {\"rulebook\":\"eu\",\"readings\":[],\"colour\":1}",
        "400 | {\"rulebook\":\"eu\",\"readings\":{}}",
        "400 | {\"rulebook\":7,\"readings\":[{\"minute\":0,\"celsius\":\"60\"}]}",
        "400 | {\"rulebook\":\"eu\",\"readings\":[{\"minute\":\"0\",\"celsius\":\"60\"}]}",
        "400 | {\"rulebook\":\"eu\",\"readings\":[{\"minute\":0}]}",
        "400 | {\"rulebook\":\"eu\",\"rulebook\":\"eu\",\"readings\":[{\"minute\":0,\"celsius\":\"60\"}]}",
        "422 | {\"rulebook\":\"eu\",\"readings\":[]}",
        "422 | {\"rulebook\":\"eu\",\"readings\":[{\"minute\":\"NaN\",\"celsius\":\"60\"}]}",
        "422 | {\"rulebook\":\"eu\",\"readings\":[{\"minute\":0,\"celsius\":\"NaN\"}]}",
        "422 | {\"rulebook\":\"eu\",\"readings\":[{\"minute\":1,\"celsius\":\"60\"},{\"minute\":1.0,\"celsius\":\"59\"}]}",
        "422 | {\"rulebook\":\"eu\",\"readings\":[{\"minute\":1e999999,\"celsius\":\"60\"}]}",
        "422 | {\"rulebook\":\"atlantis\",\"readings\":[{\"minute\":0,\"celsius\":\"60\"}]}"})
    void bad_cooling_bodies_are_refused_with_a_problem(int status, String body) {
        post("cooling-verdict", body).statusCode(status).contentType("application/problem+json").body("errors[0].message", notNullValue());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "422 | {\"rulebook\":\"eu\",\"pieces\":[{\"celsius\":\"75\",\"held_seconds\":-1}]}",
        "422 | {\"rulebook\":\"eu\",\"limit\":\"cooling\",\"pieces\":[{\"celsius\":\"75\",\"held_seconds\":1}]}",
        "422 | {\"rulebook\":\"us-food-code-2022\",\"food\":\"cake\",\"pieces\":[{\"celsius\":\"75\",\"held_seconds\":1}]}",
        "400 | {\"rulebook\":\"eu\",\"pieces\":[{\"celsius\":true,\"held_seconds\":1}]}"})
    void bad_cook_bodies_are_refused_with_a_problem(int status, String body) {
        post("cook-verdict", body).statusCode(status).contentType("application/problem+json");
    }

    @Test
    void too_much_and_another_media_type_are_refused() {
        String readings = IntStream.range(0, 10_001).mapToObj(i -> "{\"minute\":" + i + ",\"celsius\":5}").collect(Collectors.joining(","));
        post("cooling-verdict", "{\"rulebook\":\"eu\",\"readings\":[" + readings + "]}").statusCode(413).contentType("application/problem+json");
        post("cooling-verdict", " ".repeat(1_100_000) + "{}").statusCode(413).contentType("application/problem+json");
        post("cooling-verdict", "[".repeat(3_000)).statusCode(400).contentType("application/problem+json");
        given().contentType("text/plain").body("x").post("/api/calc/cook-verdict").then().statusCode(415).contentType("application/problem+json");
    }
}
