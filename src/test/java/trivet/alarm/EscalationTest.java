package trivet.alarm;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.mail.internet.MimeMessage;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;
import trivet.alarm.send.Escalation;
import trivet.ledger.Ids;
import trivet.ledger.Ledger;
import trivet.site.Sites;

/** What nobody has seen to in time is raised and told once, outside the quiet hours, and somebody's word ends it. */
@QuarkusTest
@QuarkusTestResource(value = FreshDemo.class, restrictToAnnotatedClass = true)
@QuarkusTestResource(value = Outside.class, restrictToAnnotatedClass = true)
class EscalationTest {

    private static final Random RANDOM = new Random(6);
    private static long sequence = 800_000;

    @Inject
    Escalation escalation;
    @Inject
    Alarms alarms;
    @Inject
    Notices notices;
    @Inject
    Tally tally;
    @Inject
    Ledger ledger;
    @Inject
    Sites sites;
    @Inject
    Clock clock;

    @BeforeEach
    void quiet() throws Exception {
        notices.write("", "", "", "", "olive");
        escalation.look();
        alarms.open().forEach(one -> alarms.seen(one.alarm().id(), "olive"));
        Outside.mail.purgeEmailFromAllMailboxes();
        Outside.POSTED.clear();
        Outside.answer = 204;
    }

    private String tell(String kind, String person, int minutesAgo, String batch, String data) {
        Instant at = clock.instant().minus(Duration.ofMinutes(minutesAgo)).truncatedTo(ChronoUnit.SECONDS);
        String id = Ids.uuid7(at, RANDOM);
        String json = "{\"schema\":\"record-1\",\"id\":\"" + id + "\",\"kind\":\"" + kind + "\",\"site\":\"site\",\"device\":\"A\",\"device_seq\":" + ++sequence + ",\"person\":\"" + person + "\","
                + (batch == null ? "" : "\"batch\":\"" + batch + "\",") + "\"source\":\"typed\",\"claimed_at\":\"" + at + "\",\"device_clock\":{\"wall\":\"" + at + "\",\"zone\":\"UTC\",\"offset_ms\":0},\"data\":" + data + "}";
        assertEquals(Ledger.Outcome.KEPT, ledger.put(id, json.getBytes(StandardCharsets.UTF_8), "A", Optional.empty()).outcome());
        return id;
    }

    /** A batch whose core nobody has probed for a while: begun so long ago that the check is past due. */
    private String forgotten() {
        String batch = Ids.uuid7(clock.instant(), RANDOM);
        tell("batch-started", "ana", 80, batch, "{\"product\":\"deep-quiche\",\"code\":\"E-" + sequence + "\",\"line\":\"wheat\",\"trays\":1,\"pieces\":12,\"oven\":\"oven-1\"}");
        return "E-" + (sequence - 1);
    }

    private static List<MimeMessage> mails() {
        return List.of(Outside.mail.getReceivedMessages());
    }

    @Test
    void a_forgotten_check_is_mailed_and_posted_once() throws Exception {
        notices.write("owner@example.org deputy@example.org", "http://127.0.0.1:" + Outside.hook.getAddress().getPort() + "/in", "", "", "olive");
        String code = forgotten();
        assertTrue(escalation.look() >= 1);
        assertTrue(Outside.mail.waitForIncomingEmail(5000, 2), "one message to each of two");
        assertEquals(2, mails().size());
        String text = mails().get(0).getContent().toString();
        assertTrue(text.contains(code), text);
        assertTrue(text.contains("decides nothing"), "with its caution");
        JsonNode posted = new ObjectMapper().readTree(Outside.POSTED.get(0));
        assertEquals("trivet-notice-1", posted.path("format").asText());
        assertTrue(posted.path("matters").findValuesAsText("label").contains(code));
        assertEquals(0, escalation.look(), "each matter once");
        assertEquals(1, Outside.POSTED.size());
    }

    @Test
    void in_the_quiet_hours_nothing_is_sent_and_after_them_what_is_still_open() throws Exception {
        LocalTime now = LocalTime.ofInstant(clock.instant(), sites.current().orElseThrow().zone());
        notices.write("owner@example.org", "", now.minusHours(1).truncatedTo(ChronoUnit.MINUTES).toString(), now.plusHours(1).truncatedTo(ChronoUnit.MINUTES).toString(), "olive");
        String code = forgotten();
        assertEquals(0, escalation.look());
        assertEquals(0, mails().size());
        notices.write("owner@example.org", "", now.plusHours(2).truncatedTo(ChronoUnit.MINUTES).toString(), now.plusHours(3).truncatedTo(ChronoUnit.MINUTES).toString(), "olive");
        assertTrue(escalation.look() >= 1);
        assertTrue(Outside.mail.waitForIncomingEmail(5000, 1));
        assertTrue(mails().get(0).getContent().toString().contains(code));
    }

    @Test
    void quiet_hours_may_span_midnight_and_equal_hours_are_none() {
        Notices.Settings night = new Notices.Settings(List.of(), Optional.empty(), LocalTime.of(21, 0), LocalTime.of(4, 0));
        assertTrue(night.quiet(LocalTime.of(23, 30)));
        assertTrue(night.quiet(LocalTime.of(21, 0)));
        assertFalse(night.quiet(LocalTime.of(4, 0)));
        assertFalse(night.quiet(LocalTime.of(12, 0)));
        assertFalse(new Notices.Settings(List.of(), Optional.empty(), LocalTime.NOON, LocalTime.NOON).quiet(LocalTime.NOON));
    }

    @Test
    void what_could_not_be_sent_is_tried_again() {
        notices.write("", "http://127.0.0.1:" + Outside.hook.getAddress().getPort() + "/in", "", "", "olive");
        forgotten();
        Outside.answer = 500;
        assertEquals(0, escalation.look());
        Outside.answer = 204;
        assertTrue(escalation.look() >= 1);
    }

    @Test
    void a_word_with_a_name_ends_it_and_it_is_not_told() {
        String code = forgotten();
        escalation.look();
        Alarms.Raised mine = alarms.open().stream().filter(one -> one.alarm().label().equals(code)).findFirst().orElseThrow();
        String session = given().redirects().follow(false).header("Sec-Fetch-Site", "same-origin").cookie("trivet-tablet", FreshDemo.tablet()).formParam("pin", "1111").post("/session/pin/ana").then().statusCode(303).extract().cookie("trivet-session");
        given().cookie("trivet-tablet", FreshDemo.tablet()).cookie("trivet-session", session).get("/alarms").then().statusCode(200).body(containsString(code));
        given().redirects().follow(false).header("Sec-Fetch-Site", "same-origin").cookie("trivet-tablet", FreshDemo.tablet()).cookie("trivet-session", session).post("/alarms/" + mine.alarm().id() + "/seen").then().statusCode(303);
        assertFalse(alarms.open().stream().anyMatch(one -> one.alarm().id().equals(mine.alarm().id())));
        Alarms.Raised seen = alarms.between(mine.raisedAt(), clock.instant().plusSeconds(1)).stream().filter(one -> one.alarm().id().equals(mine.alarm().id())).findFirst().orElseThrow();
        assertEquals(Optional.of("ana"), seen.seenBy());
        assertFalse(alarms.seen(mine.alarm().id(), "tom"), "the first word stays");
    }

    @Test
    void a_matter_that_is_over_ends_by_itself_and_is_still_counted() {
        String batch = Ids.uuid7(clock.instant(), RANDOM);
        tell("batch-started", "ana", 80, batch, "{\"product\":\"deep-quiche\",\"code\":\"E-" + sequence + "\",\"line\":\"wheat\",\"trays\":1,\"pieces\":12,\"oven\":\"oven-1\"}");
        escalation.look();
        int before = tally.count().total();
        tell("cook-reading", "ana", 1, batch, "{\"temperature\":{\"value\":\"80.0\",\"unit\":\"C\"},\"held_seconds\":30}");
        escalation.look();
        assertFalse(alarms.open().stream().anyMatch(one -> one.alarm().kind() == Alarm.Kind.PAST_DUE && one.alarm().link().endsWith(batch)));
        assertEquals(before, tally.count().total());
        assertEquals("core", tally.count().most().orElseThrow().cause());
    }

    @Test
    void a_hand_over_that_nobody_takes_is_told_after_ten_minutes_and_not_before() {
        String batch = Ids.uuid7(clock.instant(), RANDOM);
        tell("batch-started", "ana", 30, batch, "{\"product\":\"deep-quiche\",\"code\":\"E-" + sequence + "\",\"line\":\"wheat\",\"trays\":1,\"pieces\":12,\"oven\":\"oven-1\"}");
        String early = tell("shift-ended", "ana", 9, null, "{\"to\":\"tom\",\"batches\":[\"" + batch + "\"]}");
        String late = tell("shift-ended", "ana", 11, null, "{\"to\":\"tom\",\"batches\":[\"" + batch + "\"]}");
        String taken = tell("shift-ended", "ana", 12, null, "{\"to\":\"tom\",\"batches\":[\"" + batch + "\"]}");
        tell("shift-taken", "tom", 5, null, "{\"of\":\"" + taken + "\"}");
        tell("shift-taken", "ana", 5, null, "{\"of\":\"" + late + "\"}");
        escalation.look();
        Set<String> raised = alarms.open().stream().map(one -> one.alarm().id()).collect(Collectors.toSet());
        assertTrue(raised.contains(late), "taking over what one handed over oneself is no taking over");
        assertFalse(raised.contains(early));
        assertFalse(raised.contains(taken));
    }

    @Test
    void settings_that_cannot_be_used_are_refused_with_a_sentence() {
        for (String[] wrong : new String[][] {{"owner", "", "", ""}, {"", "ftp://x", "", ""}, {"", "nowhere", "", ""}, {"", "", "25:00", ""}}) {
            String said = org.junit.jupiter.api.Assertions.assertThrows(IllegalArgumentException.class, () -> notices.write(wrong[0], wrong[1], wrong[2], wrong[3], "olive")).getMessage();
            assertTrue(said.length() > 20, said);
        }
    }

    @Test
    void the_wall_is_open_to_the_tablet_alone_and_says_what_came_due_while_it_slept() {
        String code = forgotten();
        given().cookie("trivet-tablet", FreshDemo.tablet()).get("/wall").then().statusCode(200).body(containsString(code));
        given().cookie("trivet-tablet", FreshDemo.tablet()).get("/wall/missed.json?since=" + clock.instant().minus(Duration.ofHours(2)).toEpochMilli()).then().statusCode(200).body(containsString(code));
        given().cookie("trivet-tablet", FreshDemo.tablet()).get("/wall/missed.json?since=" + clock.instant().toEpochMilli()).then().statusCode(200).body(org.hamcrest.Matchers.equalTo("[]"));
        given().redirects().follow(false).get("/wall").then().statusCode(303);
    }
}
