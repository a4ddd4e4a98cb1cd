package trivet.tablet.web;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;
import trivet.measure.Digest;
import trivet.words.web.ScreenFiles;

/** What makes a tablet able to work without a network, seen from the service: the worker's rules, the files that it keeps, the kit, and what tablets say. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class ShellFilesTest {

    private static io.restassured.specification.RequestSpecification tablet() {
        return given().header("Authorization", "Bearer " + FreshDemo.tablet());
    }

    @Test
    void every_file_of_the_screens_is_kept_by_the_tablet_and_nothing_else() throws Exception {
        Path root = Path.of("src/main/resources/META-INF/resources");
        try (Stream<Path> all = Files.walk(root)) {
            assertEquals(all.filter(Files::isRegularFile).map(file -> root.relativize(file).toString()).sorted().toList(), ScreenFiles.list().stream().sorted().toList());
        }
    }

    @Test
    void the_worker_names_its_build_keeps_every_file_and_never_touches_records() {
        String worker = given().get("/sw.js").then().statusCode(200).header("Content-Type", equalTo("text/javascript;charset=UTF-8")).header("Cache-Control", equalTo("no-store")).extract().asString();
        assertTrue(worker.matches("(?s)const BUILD = \"[0-9a-f]{16}\";\\nconst FILES = \\[.*"), worker.substring(0, 60));
        ScreenFiles.list().forEach(file -> assertTrue(worker.contains("\"/" + file + "\""), file));
        assertTrue(worker.contains("const UNTOUCHED = [\"/api/\", \"/events\", \"/owner\""));
        assertTrue(worker.contains("request.method !== \"GET\""), "what writes never passes through the worker");
        String build = worker.substring(15, 31);
        given().get("/tablet/shell").then().statusCode(200).body(org.hamcrest.Matchers.containsString("data-build=\"" + build + "\""));
        ScreenFiles.list().forEach(file -> given().get("/" + file).then().statusCode(200));
        given().get("/manifest.webmanifest").then().statusCode(200).body("display", equalTo("standalone")).body("start_url", equalTo("/")).body("icons.size()", equalTo(1));
    }

    @Test
    void the_kit_has_what_a_day_without_a_network_needs_and_is_not_sent_twice() {
        String mark = tablet().get("/tablet/kit.json").then().statusCode(200).body("format", equalTo(1)).body("device", equalTo("A")).body("plans.size()", greaterThan(2))
                .body("plans[0].core.rows[0].least.c", notNullValue()).body("cooling[0].minutes", notNullValue()).body("ranges.'chilled-storage'.maximum.c", equalTo("8")).body("people.id", hasItem("ana"))
                .body("people.find { it.id == 'ana' }.pin.iterations", equalTo(210_000)).body("units.find { it.id == 'fridge-1' }.checks.size()", greaterThan(5)).body("batches.size()", greaterThan(0))
                .extract().header("ETag");
        tablet().header("If-None-Match", mark).get("/tablet/kit.json").then().statusCode(org.hamcrest.Matchers.oneOf(304, 200));
    }

    @Test
    void a_tablet_says_how_it_stands_and_a_new_store_under_it_is_noticed() {
        tablet().contentType("application/json").body("{\"install\":\"store-1\",\"sequence\":7000000,\"waiting\":5}").post("/api/tablet/met").then().statusCode(200).body("sequence", equalTo(7_000_000)).body("now", greaterThan(0L));
        tablet().contentType("application/json").body("{\"install\":\"store-2\",\"sequence\":0,\"waiting\":0}").post("/api/tablet/met").then().statusCode(200).body("sequence", equalTo(7_000_000));
        assertTrue(heard.anew().stream().anyMatch(anew -> anew.device().equals("A") && anew.told() == 7_000_000 && anew.received() < 7_000_000));
        tablet().contentType("application/json").body("{\"sequence\":1}").post("/api/tablet/met").then().statusCode(400);
        given().contentType("application/json").body("{\"install\":\"x\",\"sequence\":1}").post("/api/tablet/met").then().statusCode(401);
    }

    @jakarta.inject.Inject
    trivet.ledger.Heard heard;

    @Test
    void what_was_acknowledged_and_is_lacking_is_asked_for_again() {
        String known = tablet().get("/tablet/kit.json").then().extract().path("batches[0].told[0].id");
        List<String> lacking = tablet().contentType("application/json").body("{\"ids\":[\"" + known + "\",\"0190ffff-0000-7000-8000-000000000000\"]}").post("/api/tablet/lacking").then().statusCode(200).extract().path("lacking");
        assertEquals(List.of("0190ffff-0000-7000-8000-000000000000"), lacking);
    }

    @Test
    void a_photo_is_kept_under_the_hash_of_its_bytes_and_refused_under_another() {
        byte[] picture = {(byte) 0xff, (byte) 0xd8, 1, 2, 3};
        String hash = Digest.sha256(picture);
        for (int twice = 0; twice < 2; twice++) {
            tablet().contentType("image/jpeg").body(picture).put("/api/photos/" + hash).then().statusCode(201);
        }
        tablet().contentType("image/jpeg").body(picture).put("/api/photos/" + "0".repeat(64)).then().statusCode(422);
        tablet().contentType("text/html").body(picture).put("/api/photos/" + hash).then().statusCode(415);
        byte[] kept = tablet().get("/photos/" + hash).then().statusCode(200).header("Content-Type", equalTo("image/jpeg")).extract().asByteArray();
        assertFalse(kept.length == 0);
        org.junit.jupiter.api.Assertions.assertArrayEquals(picture, kept);
    }
}
