package trivet.deviation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import trivet.batch.Dispute;
import trivet.batch.Told;
import trivet.limit.Verdict;

/** One record that two tablets corrected differently: both are shown, the worse counts, and a person's pick ends it. */
@QuarkusTest
class DisputesTest extends BatchBegun {

    private String on(String device, String kind, String person, int minute, String data) {
        Instant at = start.plus(Duration.ofMinutes(minute));
        return tell(device, kind, person, "\"batch\":\"" + batch + "\",", at, "{\"wall\":\"" + at + "\",\"zone\":\"UTC\"}", at, data);
    }

    private static String correction(String of, String value) {
        return "{\"of\":\"" + of + "\",\"reason\":\"misread\",\"data\":" + celsius(value) + "}";
    }

    private static String pick(String of, String correction) {
        return "{\"of\":\"" + of + "\",\"correction\":\"" + correction + "\"}";
    }

    private String core() {
        return on("Y", "cook-reading", "ana", 50, PASSED);
    }

    @Test
    void two_tablets_that_differ_are_both_shown_and_the_worse_counts() {
        String core = core();
        on("Y", "correction", "ana", 51, correction(core, "76.0"));
        on("Z", "correction", "tom", 52, correction(core, "67.0"));
        List<Dispute> disputes = now().disputes();
        assertEquals(1, disputes.size());
        assertEquals(List.of("76.0 °C", "67.0 °C"), disputes.get(0).versions().stream().map(version -> version.value().orElse("")).toList());
        assertEquals(Verdict.BREACHED, now().cook());
        assertTrue(now().held());
        assertEquals(2, now().waiting().size(), "both wait for a pick");
    }

    @Test
    void the_worse_counts_whichever_came_last() {
        String core = core();
        on("Z", "correction", "tom", 51, correction(core, "67.0"));
        on("Y", "correction", "ana", 52, correction(core, "76.0"));
        assertEquals(Verdict.BREACHED, now().cook());
    }

    @Test
    void accepting_both_picks_neither() {
        String core = core();
        String better = on("Y", "correction", "ana", 51, correction(core, "76.0"));
        String worse = on("Z", "correction", "ana", 52, correction(core, "67.0"));
        on("Y", "accepted", "tom", 53, "{\"records\":[\"" + better + "\",\"" + worse + "\"]}");
        assertEquals(1, now().disputes().size());
        assertEquals(Verdict.BREACHED, now().cook());
    }

    @Test
    void a_pick_by_somebody_who_wrote_neither_ends_it_and_accepts_the_picked_one() {
        String core = on("Y", "cook-reading", "ana", 50, "{\"temperature\":{\"value\":\"47.6\",\"unit\":\"C\"},\"held_seconds\":30}");
        String right = on("Y", "correction", "ana", 51, correction(core, "76.4"));
        on("Z", "correction", "ana", 52, correction(core, "46.7"));
        on("Z", "picked", "tom", 60, pick(core, right));
        assertEquals(List.of(), now().disputes());
        assertEquals(Verdict.WITHIN, now().cook());
        Told told = now().told().stream().filter(one -> one.entry().id().equals(core)).findFirst().orElseThrow();
        assertEquals("76.4", told.data().temperature("temperature").orElseThrow().value().toPlainString());
        assertFalse(told.waiting());
    }

    @Test
    void a_pick_by_a_writer_chooses_but_still_waits_for_acceptance() {
        String core = on("Y", "cook-reading", "ana", 50, "{\"temperature\":{\"value\":\"47.6\",\"unit\":\"C\"},\"held_seconds\":30}");
        String right = on("Y", "correction", "ana", 51, correction(core, "76.4"));
        on("Z", "correction", "tom", 52, correction(core, "46.7"));
        on("Z", "picked", "ana", 60, pick(core, right));
        assertEquals(List.of(), now().disputes());
        assertEquals(Verdict.BREACHED, now().cook());
        assertEquals(List.of(right), now().waiting().stream().map(entry -> entry.id()).toList());
    }

    @Test
    void a_correction_by_another_tablet_after_the_pick_is_a_new_dispute() {
        String core = core();
        String first = on("Y", "correction", "ana", 51, correction(core, "76.0"));
        on("Z", "correction", "ana", 52, correction(core, "67.0"));
        on("Z", "picked", "tom", 53, pick(core, first));
        assertEquals(Verdict.WITHIN, now().cook());
        on("Z", "correction", "ana", 54, correction(core, "68.0"));
        assertEquals(1, now().disputes().size());
        assertEquals(Verdict.BREACHED, now().cook());
    }

    @Test
    void the_same_correction_from_two_tablets_is_no_dispute() {
        String core = core();
        on("Y", "correction", "ana", 51, correction(core, "76.0"));
        on("Z", "correction", "ana", 52, correction(core, "76.0"));
        assertEquals(List.of(), now().disputes());
        assertEquals(2, now().told().stream().filter(one -> one.entry().id().equals(core)).findFirst().orElseThrow().corrections().size());
    }

    @Test
    void one_tablet_that_corrects_itself_is_no_dispute() {
        String core = core();
        on("Y", "correction", "ana", 51, correction(core, "67.0"));
        on("Y", "correction", "ana", 52, correction(core, "76.0"));
        assertEquals(List.of(), now().disputes());
    }

    @Test
    void a_batch_is_shown_with_its_dispute() {
        String core = core();
        on("Y", "correction", "ana", 51, correction(core, "76.0"));
        on("Z", "correction", "tom", 52, "{\"of\":\"" + core + "\",\"reason\":\"not ours\",\"void\":true}");
        assertEquals(List.of(false, true), now().disputes().get(0).versions().stream().map(Dispute.Version::voided).toList());
        assertEquals(Verdict.UNJUDGED, now().cook(), "one of them says that it does not count at all");
    }
}
