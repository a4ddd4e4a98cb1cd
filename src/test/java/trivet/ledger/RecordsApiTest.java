package trivet.ledger;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;

/** The way in for records: durable, idempotent, never changed, and refused only for a stated reason. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class RecordsApiTest {

    private static final Random RANDOM = new Random(7);
    private static int sequence = 100_000;

    static String record(String id, String kind, String batch, String at, String data) {
        return "{\"schema\":\"record-1\",\"id\":\"" + id + "\",\"kind\":\"" + kind + "\",\"site\":\"site\",\"device\":\"A\",\"device_seq\":" + ++sequence + ",\"person\":\"ana\","
                + (batch == null ? "" : "\"batch\":\"" + batch + "\",") + "\"source\":\"typed\",\"claimed_at\":\"" + at + "\",\"device_clock\":{\"wall\":\"" + at + "\",\"zone\":\"Europe/London\"},\"data\":"
                + data + "}";
    }

    static String id() {
        return Ids.uuid7(Instant.parse("2026-11-20T05:00:00Z"), RANDOM);
    }

    private static ValidatableResponse post(String path, String body) {
        return given().header("Authorization", "Bearer " + FreshDemo.tablet()).contentType("application/json").body(body).post(path).then();
    }

    static ValidatableResponse put(String id, String body) {
        return given().header("Authorization", "Bearer " + FreshDemo.tablet()).contentType("application/json").body(body).put("/api/records/" + id).then();
    }

    private static String temperature(String value) {
        return "{\"temperature\":{\"value\":\"" + value + "\",\"unit\":\"C\"},\"held_seconds\":30,\"piece\":1}";
    }

    @Test
    void a_record_is_kept_once_and_another_body_under_its_id_clashes() {
        String id = id();
        String body = record(id, "note", null, "2026-11-20T05:00:00Z", "{\"text\":\"flour low\"}");
        String sha256 = put(id, body).statusCode(201).body("id", equalTo(id)).body("receive_number", notNullValue()).extract().path("sha256");
        put(id, body.replace("\"kind\"", " \"kind\"")).statusCode(200).body("sha256", equalTo(sha256));
        put(id, body.replace("low", "gone")).statusCode(409).contentType("application/problem+json");
    }

    @Test
    void only_what_must_be_refused_is_refused() {
        String id = id();
        String body = record(id, "note", null, "2026-11-20T05:00:00Z", "{}");
        given().contentType("application/json").body(body).put("/api/records/" + id).then().statusCode(401);
        put(id(), body).statusCode(422);
        put(id, body.replace("record-1", "record-9")).statusCode(400).body("errors.field", hasItem("schema"));
        put(id, body.replace("\"note\"", "\"rumour\"")).statusCode(400).body("errors.field", hasItem("kind"));
        put(id, "{").statusCode(400);
        put(id, body.replace("\"device\":\"A\"", "\"device\":\"B\"")).statusCode(403);
        put(id, record(id, "released", null, "2026-11-20T05:00:00Z", "{}")).statusCode(403);
        given().header("Authorization", "Bearer " + FreshDemo.tablet()).contentType("application/json").body("[" + body + ",{\"id\":\"x\"}]").post("/api/records").then()
                .statusCode(200).body("[0].status", equalTo(201)).body("[1].status", equalTo(400));
    }

    @Test
    void a_failed_core_goes_back_in_the_oven_and_passes() {
        String batch = id();
        put2("batch-started", batch, "2026-11-20T04:30:00Z", "{\"product\":\"deep-quiche\",\"code\":\"A-9001\",\"line\":\"wheat\",\"trays\":1,\"pieces\":12,\"oven\":\"oven-1\"}");
        put2("cook-reading", batch, "2026-11-20T05:10:00Z", temperature("74.9")).body("verdict.verdict", equalTo("breached"))
                .body("verdict.words", equalTo("74.9 °C. 0.1 °C short of 75 °C for 30 s. Back in the oven, then probe again."));
        put2("back-in-oven", batch, "2026-11-20T05:11:00Z", "{}");
        put2("cook-reading", batch, "2026-11-20T05:20:00Z", temperature("76.1")).body("verdict.verdict", equalTo("within"));
        put2("cook-reading", batch, "2026-11-20T05:21:00Z", temperature("300")).body("verdict.verdict", equalTo("unjudged"));
    }

    private static ValidatableResponse put2(String kind, String batch, String at, String data) {
        String id = id();
        return put(id, record(id, kind, batch, at, data)).statusCode(201);
    }

    @Test
    void no_table_of_records_can_be_updated_or_deleted() throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + FreshDemo.database()); Statement statement = connection.createStatement()) {
            List<String> tables = new ArrayList<>();
            try (ResultSet rows = statement.executeQuery("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT IN ('flyway_schema_history', 'heard', 'wrong_try')")) {
                while (rows.next()) {
                    tables.add(rows.getString(1));
                }
            }
            assertTrue(tables.containsAll(List.of("record", "mention", "clash", "register", "installed", "aside", "aside_taken", "photo", "alarm")), tables.toString());
            String id = id();
            String body = record(id, "correction", null, "2026-11-20T05:00:00Z", "{\"of\":\"x\",\"reason\":\"y\"}");
            put(id, body).statusCode(201);
            put(id, body.replace("\"y\"", "\"z\"")).statusCode(409);
            post("/api/tablet/met", "{\"install\":\"one\",\"sequence\":1}").statusCode(200);
            post("/api/tablet/review", "{\"record\":\"{}\",\"reason\":\"refused\"}").statusCode(201);
            byte[] picture = {1, 2, 3};
            given().header("Authorization", "Bearer " + FreshDemo.tablet()).contentType("image/jpeg").body(picture).put("/api/photos/" + trivet.measure.Digest.sha256(picture)).then().statusCode(201);
            statement.executeUpdate("INSERT INTO alarm (id, kind, label, cause, words, link, since, raised_at, seen_at, seen_by) VALUES ('a', 'past-due', 'A-1', 'core', 'w', '/', '2026-11-20T05:00:00.000Z', '2026-11-20T05:00:00.000Z', '2026-11-20T05:00:00.000Z', 'ana')");
            statement.executeUpdate("INSERT INTO aside_taken (number, receive_number, taken_by, taken_at) SELECT min(number), 1, 'olive', '2026-11-20T05:00:00.000Z' FROM aside");
            assertThrows(SQLException.class, () -> statement.executeUpdate("UPDATE alarm SET seen_by = 'tom'"), "the first word stays");
            for (String table : tables) {
                String column = java.util.Map.of("mention", "named", "installed", "device", "aside", "device", "photo", "device", "aside_taken", "taken_by").getOrDefault(table, "id");
                assertThrows(SQLException.class, () -> statement.executeUpdate("UPDATE " + table + " SET " + column + " = " + column), table);
                assertThrows(SQLException.class, () -> statement.executeUpdate("DELETE FROM " + table), table);
            }
        }
    }

    @Inject
    Journal journal;

    @Test
    void another_screen_is_told_of_a_record_within_two_seconds_and_of_the_last_one_on_connecting() throws Exception {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://localhost:" + RestAssured.port + "/events")).header("Authorization", "Bearer " + FreshDemo.tablet()).build();
        HttpResponse<Stream<String>> events = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofLines());
        assertEquals(200, events.statusCode());
        BlockingQueue<String> lines = new LinkedBlockingQueue<>();
        Thread reader = new Thread(() -> events.body().filter(line -> line.startsWith("data:")).forEach(line -> lines.add(line.substring(5).strip())));
        reader.setDaemon(true);
        reader.start();
        assertEquals(String.valueOf(journal.lastNumber()), lines.poll(2, TimeUnit.SECONDS));
        String id = id();
        int number = put(id, record(id, "note", null, "2026-11-20T05:00:00Z", "{\"text\":\"told\"}")).statusCode(201).extract().path("receive_number");
        String told = lines.poll(2, TimeUnit.SECONDS);
        while (told != null && Integer.parseInt(told) < number) {
            told = lines.poll(2, TimeUnit.SECONDS);
        }
        assertEquals(String.valueOf(number), told);
        assertEquals(303, HttpClient.newHttpClient().send(HttpRequest.newBuilder(request.uri()).build(), HttpResponse.BodyHandlers.discarding()).statusCode(), "a stranger hears nothing");
    }

    @Test
    void a_number_that_has_not_come_is_named_until_it_comes() {
        String before = id();
        put(before, record(before, "note", null, "2026-11-20T05:00:00Z", "{}")).statusCode(201);
        int missing = ++sequence;
        String after = id();
        put(after, record(after, "note", null, "2026-11-20T05:00:01Z", "{}")).statusCode(201);
        assertTrue(journal.gaps(500).stream().anyMatch(gap -> gap.device().equals("A") && gap.first() == missing && gap.last() == missing), journal.gaps(500).toString());
        int next = sequence;
        sequence = missing - 1;
        String late = id();
        put(late, record(late, "note", null, "2026-11-20T05:00:00Z", "{}")).statusCode(201);
        sequence = next;
        assertTrue(journal.gaps(500).stream().noneMatch(gap -> gap.device().equals("A") && gap.first() <= missing && missing <= gap.last()));
    }
}
