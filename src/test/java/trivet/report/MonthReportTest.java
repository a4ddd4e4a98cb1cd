package trivet.report;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;

/** The demo's October: its counts against raw SQL, its PDF, its CSV, and who may see it. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class MonthReportTest {

    private static final String IN_OCTOBER = " WHERE claimed_at >= '2026-10-01T02:00:00.000Z' AND claimed_at < '2026-11-01T03:00:00.000Z'";

    private static String html() {
        return given().auth().preemptive().basic("olive", "thornfold-demo").get("/reports/month/2026-10").then().statusCode(200).extract().asString();
    }

    private static long number(String html, String pattern) {
        Matcher matcher = Pattern.compile("(\\d+) " + pattern).matcher(html);
        assertTrue(matcher.find(), pattern);
        return Long.parseLong(matcher.group(1));
    }

    private static long sql(String query) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + FreshDemo.database()); var statement = connection.createStatement();
                ResultSet row = statement.executeQuery(query)) {
            return row.getLong(1);
        }
    }

    @Test
    void the_counts_are_those_of_the_database() throws Exception {
        String html = html();
        assertEquals(sql("SELECT count(*) FROM record" + IN_OCTOBER), number(html, "records,"));
        assertEquals(sql("SELECT count(*) FROM record" + IN_OCTOBER + " AND kind = 'batch-started'"), number(html, "batches,"));
        assertEquals(sql("SELECT count(*) FROM record" + IN_OCTOBER + " AND kind = 'correction'"), number(html, "corrections,"));
        assertEquals(sql("SELECT count(*) FROM record" + IN_OCTOBER + " AND kind = 'closed-day'"), number(html, "closed days"));
        assertEquals(sql("SELECT count(*) FROM record" + IN_OCTOBER + " AND (julianday(json_extract(CAST(body AS TEXT), '$.device_clock.wall')) - julianday(claimed_at)) * 1440 > 15.001"),
                number(html, "records written later"));
        assertEquals(3, number(html, "deviations,"), "the failed core, the slow tray and the warm fridge");
    }

    @Test
    void the_pdf_is_tagged_and_has_a_title_and_a_language() throws Exception {
        byte[] pdf = given().auth().preemptive().basic("olive", "thornfold-demo").get("/reports/month/2026-10.pdf").then().statusCode(200).extract().asByteArray();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertTrue(document.getDocumentCatalog().getMarkInfo().isMarked());
            assertTrue(document.getDocumentCatalog().getStructureTreeRoot() != null);
            assertEquals("en", document.getDocumentCatalog().getLanguage());
            assertEquals("Food safety records", document.getDocumentInformation().getTitle());
        }
    }

    @Test
    void the_csv_has_a_row_for_each_record() throws Exception {
        String csv = given().auth().preemptive().basic("olive", "thornfold-demo").get("/reports/month/2026-10.csv").then().statusCode(200).extract().asString();
        assertEquals(sql("SELECT count(*) FROM record" + IN_OCTOBER) + 1, csv.lines().count());
        assertEquals("'=1+1", CsvGuard.cell("=1+1"));
        assertEquals("'-x", CsvGuard.cell("-x"));
        assertEquals("-18.5", CsvGuard.cell("-18.5"));
    }

    @Test
    void a_stranger_and_a_bad_range_are_refused() {
        given().get("/reports/month/2026-10").then().statusCode(401);
        given().auth().preemptive().basic("olive", "wrong").get("/reports/month/2026-10").then().statusCode(401);
        given().auth().preemptive().basic("ana", "1111").get("/reports/month/2026-10").then().statusCode(401);
        given().auth().preemptive().basic("olive", "thornfold-demo").get("/reports/month/2026-13").then().statusCode(404);
        given().auth().preemptive().basic("olive", "thornfold-demo").get("/reports/range?from=2026-10-09&to=2026-10-01").then().statusCode(400).body(containsString("the first one first"));
    }
}
