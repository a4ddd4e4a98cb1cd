package trivet.calc;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trivet.FreshDemo;

/** The page of calculators, and the readings that people paste into it. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class CalculatorsTest {

    @ParameterizedTest
    @ValueSource(strings = {"0;72,0\n10;61,5\n20;52,9", "time\ttemperature\n0\t72.0\n10\t61.5\n20\t52.9", "05:10 72.0 °C\n05:20 61.5 °C\n05:30 52.9 °C\n", "23:55;72,0\r\n00:05;61,5\r\n00:15;52,9", "20 52.9\n0 72\n10 61.5"})
    void readings_are_understood_as_they_are_pasted(String text) {
        Pasted.Points points = Pasted.read(text);
        assertArrayEquals(new double[] {0, 10, 20}, points.minutes(), 1e-9);
        assertArrayEquals(new double[] {72, 61.5, 52.9}, points.values(), 1e-9);
    }

    @Test
    void a_line_that_cannot_be_read_is_named() {
        String refused = assertThrows(IllegalArgumentException.class, () -> Pasted.read("0;72\nten;61\n")).getMessage();
        assertTrue(refused.contains("Line 2") && refused.contains("ten;61"), refused);
        assertThrows(IllegalArgumentException.class, () -> Pasted.read("0;72"));
        assertThrows(IllegalArgumentException.class, () -> Pasted.read("0;72\n0;71"));
    }

    @Test
    void anybody_calculates_without_signing_in() {
        given().get("/calculators").then().statusCode(200);
        given().header("Sec-Fetch-Site", "same-origin").formParam("readings", "05:10;72,0\n05:20;61,5\n05:30;52,9\n05:40;45,6").formParam("air", "3").formParam("rulebook", "england-wales-ni").post("/calculators")
                .then().statusCode(200).body(containsString("At about minute 16")).body(containsString("log10 more")).body(containsString("Newton"));
        given().header("Sec-Fetch-Site", "same-origin").formParam("readings", "05:10;hot").post("/calculators").then().statusCode(422).body(containsString("Line 1"));
    }

    @ParameterizedTest
    @org.junit.jupiter.params.provider.CsvSource(delimiter = '|', value = {"shelf|celsius=5;ph=6,5;water_activity=0,99|6.9 days", "boiling|altitude=1500|94.98", "conforms|value=0.3;uncertainty=0.14;lower=-1;upper=1|pass",
        "samples|n=5;failing=5|77.4 %", "boiling|altitude=high|number", "samples|n=0;failing=5|whole number"})
    void smaller_calculations(String kind, String fields, String expected) {
        var request = given().header("Sec-Fetch-Site", "same-origin").formParam("kind", kind);
        for (String field : fields.split(";")) {
            request.formParam(field.split("=")[0], field.split("=")[1]);
        }
        request.post("/calculators").then().body(containsString(expected));
    }
}
