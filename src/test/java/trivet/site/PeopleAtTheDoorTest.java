package trivet.site;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;
import trivet.ledger.Tries;
import trivet.people.People;
import trivet.people.Person;
import trivet.people.Role;

/** Signing in by PIN and by badge: last days, wrong tries that outlast a restart, and badges that a new one ends. */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class PeopleAtTheDoorTest {

    @Inject
    People people;
    @Inject
    Sites sites;
    @Inject
    Tries tries;
    @Inject
    Clock clock;

    private static RequestSpecification here() {
        return given().redirects().follow(false).header("Sec-Fetch-Site", "same-origin").cookie("trivet-tablet", FreshDemo.tablet());
    }

    private static ValidatableResponse pin(String person, String pin) {
        return here().formParam("pin", pin).post("/session/pin/" + person).then();
    }

    private static ValidatableResponse badge(String text) {
        return here().formParam("badge", text).post("/session/badge").then();
    }

    private String person(Optional<LocalDate> lastDay) {
        String id = people.newId("Nadia Test");
        people.setPin(id, "2468", "olive");
        people.write(new Person(id, "Nadia Test", "NT", Set.of(Role.BAKER), true, lastDay, "en"), "olive");
        return id;
    }

    private LocalDate today() {
        return sites.current().orElseThrow().dayOf(clock.instant());
    }

    @Test
    void the_last_day_is_inclusive() {
        pin(person(Optional.of(today())), "2468").statusCode(303);
        pin(person(Optional.of(today().minusDays(1))), "2468").statusCode(403).body(containsString("last day of Nadia Test"));
        pin(person(Optional.of(today().plusDays(1))), "2468").statusCode(303);
    }

    @Test
    void the_page_and_the_tablet_know_how_many_digits_end_a_pin() {
        String id = person(Optional.empty());
        here().get("/session/pin/" + id).then().statusCode(200).body(containsString("data-digits=\"4\""));
        people.setPin(id, "135790", "olive");
        here().get("/session/pin/" + id).then().statusCode(200).body(containsString("data-digits=\"6\""));
        here().get("/tablet/kit.json").then().statusCode(200).body("people.find { it.id == '" + id + "' }.digits", is(6));
    }

    @Test
    void somebody_whose_time_has_ended_is_no_tile_and_a_running_session_ends_too() {
        String id = person(Optional.empty());
        String session = pin(id, "2468").statusCode(303).extract().cookie("trivet-session");
        here().cookie("trivet-session", session).get("/units").then().statusCode(200);
        people.write(people.find(id).orElseThrow().until(Optional.of(today().minusDays(1))), "olive");
        here().cookie("trivet-session", session).get("/units").then().statusCode(303);
        assertTrue(!here().get("/").then().statusCode(200).extract().asString().contains("/session/pin/" + id + "\""));
    }

    @Test
    void wrong_tries_are_on_the_disk_and_lock_out_pin_and_badge() {
        String id = person(Optional.empty());
        String badge = people.newBadge(id, "olive");
        for (int i = 0; i < 5; i++) {
            pin(id, "0000").statusCode(403);
        }
        assertEquals(5, tries.wrong(id).orElseThrow().count());
        pin(id, "2468").statusCode(403).body(containsString("Too many"));
        badge(badge).statusCode(403);
        tries.succeeded(id);
        pin(id, "2468").statusCode(303);
        assertTrue(tries.wrong(id).isEmpty(), "a right one forgets them");
    }

    @Test
    void a_badge_signs_in_and_a_new_one_ends_it() {
        String id = person(Optional.empty());
        String first = people.newBadge(id, "olive");
        badge(first).statusCode(303);
        String second = people.newBadge(id, "olive");
        badge(first).statusCode(403).body(containsString("no badge"));
        badge(second).statusCode(303);
        badge("TB.nobody.123").statusCode(403);
        badge("1234").statusCode(403);
    }

    /** The printed code is read by the reference reader of ISO/IEC 18004 in the library zxing. */
    @Test
    void the_printed_code_says_what_signs_in() throws Exception {
        String id = person(Optional.empty());
        String session = here().formParams("person", "olive", "password", "thornfold-demo").post("/session/owner").then().statusCode(303).extract().cookie("trivet-session");
        String page = here().cookie("trivet-session", session).formParam("id", id).post("/owner/people/badge").then().statusCode(200).extract().asString();
        badge(read(page)).statusCode(303);
    }

    private static String read(String page) throws Exception {
        Matcher box = Pattern.compile("viewBox=\"0 0 (\\d+) ").matcher(page);
        assertTrue(box.find());
        int size = Integer.parseInt(box.group(1));
        int scale = 4;
        int[] pixels = new int[size * size * scale * scale];
        Arrays.fill(pixels, 0xffffff);
        for (Matcher module = Pattern.compile("M(\\d+) (\\d+)h1v1h-1z").matcher(page); module.find();) {
            for (int dy = 0; dy < scale; dy++) {
                for (int dx = 0; dx < scale; dx++) {
                    pixels[(Integer.parseInt(module.group(2)) * scale + dy) * size * scale + Integer.parseInt(module.group(1)) * scale + dx] = 0;
                }
            }
        }
        return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(size * scale, size * scale, pixels)))).getText();
    }
}
