package trivet.deviation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;
import trivet.FreshDemo;
import trivet.batch.Life;
import trivet.deviation.Deviation.State;
import trivet.ledger.Ids;
import trivet.limit.Verdict;

/** A batch's life, its deviations and holds, and who may end them; judged by the demo's rulebook (75 °C for 30 s, below 8 °C in 90 min). */
@QuarkusTest
@QuarkusTestResource(FreshDemo.class)
class DaybookTest extends BatchBegun {

    @Test
    void a_batch_goes_from_the_oven_to_the_shop() {
        assertEquals(Life.BAKING, now().life());
        baked();
        assertEquals(Life.COOLING, now().life());
        tell("cooling-reading", "ana", 135, celsius("7.9"));
        assertEquals(Verdict.WITHIN, now().cooling());
        tell("put-away", "ana", 138, "{\"unit\":\"fridge-1\",\"use_by\":\"2099-01-01\"}");
        assertEquals(Life.STORED, now().life());
        assertFalse(now().held());
        tell("gone", "ana", 140, "{\"how\":\"sold\",\"pieces\":5}");
        assertEquals(Life.STORED, now().life());
        tell("gone", "ana", 141, "{\"how\":\"sold\"}");
        assertEquals(Life.GONE, now().life());
    }

    @Test
    void a_cooling_breach_holds_until_another_person_than_the_writer_releases_with_evidence() {
        baked();
        tell("cooling-reading", "ana", 143, celsius("8.0"));
        BatchRecord held = now();
        assertTrue(held.held());
        String id = held.deviations().get(0).id();
        assertTrue(held.deviations().get(0).words().contains("past guidance"), held.deviations().get(0).words());
        tell("released", "ben", 144, "{\"deviations\":[\"" + id + "\"],\"evidence\":\"assessed by a laboratory\"}");
        assertTrue(now().held(), "a release before the form is complete ends nothing yet");
        tell("deviation-answer", "ben", 145, answer(id, "release"));
        assertTrue(now().held(), "nobody releases what they answered themselves");
        tell("released", "pat", 146, "{\"deviations\":[\"" + id + "\"]}");
        assertTrue(now().held(), "a release needs evidence");
        tell("released", "pat", 147, "{\"deviations\":[\"" + id + "\"],\"evidence\":\"assessed by a laboratory\"}");
        assertFalse(now().held());
        assertEquals(State.CLOSED, now().deviations().get(0).state());
        tell("cooling-reading", "ana", 148, celsius("9.0"));
        assertTrue(now().held(), "a failing reading after a release opens a new deviation");
        assertTrue(now().deviations().stream().anyMatch(d -> d.words().contains("after the batch was released")));
    }

    @Test
    void destroying_needs_no_second_person() {
        baked();
        tell("cooling-reading", "ana", 143, celsius("12"));
        String id = now().deviations().get(0).id();
        tell("destroyed", "ana", 145, "{\"reason\":\"too slow\"}");
        assertEquals(State.OPEN, now().deviations().get(0).state());
        tell("deviation-answer", "ana", 146, answer(id, "destroy"));
        assertEquals(Life.DESTROYED, now().life());
        assertEquals(State.CLOSED, now().deviations().get(0).state());
    }

    @Test
    void a_core_that_was_not_probed_is_no_pass() {
        tell("out-of-oven", "ana", 52, "{}");
        assertEquals(Verdict.UNJUDGED, now().cook());
        assertTrue(now().held());
        assertFalse(now().deviations().get(0).breach());
    }

    @Test
    void probing_again_without_the_oven_does_not_correct_a_failed_core() {
        tell("cook-reading", "ana", 50, PASSED.replace("78.0", "74.9"));
        tell("cook-reading", "ana", 51, PASSED);
        assertEquals(Verdict.BREACHED, now().cook());
        tell("back-in-oven", "ana", 53, "{}");
        tell("cook-reading", "ana", 60, PASSED);
        assertEquals(Verdict.WITHIN, now().cook());
        assertEquals("corrected at the step", now().deviations().get(0).closedHow().orElseThrow());
        assertFalse(now().held());
    }

    @Test
    void a_correction_that_betters_waits_for_somebody_who_wrote_neither() {
        baked();
        String late = tell("cooling-reading", "ana", 143, celsius("9.1"));
        String correction = tell("correction", "ben", 145, "{\"of\":\"" + late + "\",\"reason\":\"read the wrong tray\",\"data\":{\"temperature\":{\"value\":\"6.1\",\"unit\":\"C\"}}}");
        assertEquals(Verdict.BREACHED, now().cooling());
        tell("accepted", "ana", 146, "{\"records\":[\"" + correction + "\"]}");
        assertTrue(now().held(), "the writer of the reading accepts nothing");
        tell("accepted", "pat", 147, "{\"records\":[\"" + correction + "\"]}");
        assertFalse(now().deviations().stream().anyMatch(Deviation::breach));
    }

    @Test
    void a_failed_reading_that_is_said_not_to_count_counts_until_another_accepts_that() {
        baked();
        String late = tell("cooling-reading", "ana", 143, celsius("9.1"));
        String correction = tell("correction", "ana", 144, "{\"of\":\"" + late + "\",\"reason\":\"wrong tray\",\"void\":true}");
        assertEquals(Verdict.BREACHED, now().cooling());
        assertTrue(now().held());
        assertEquals(1, now().waiting().size());
        tell("accepted", "pat", 147, "{\"records\":[\"" + correction + "\"]}");
        assertFalse(now().deviations().stream().anyMatch(Deviation::breach));
        assertTrue(now().waiting().isEmpty());
    }

    @Test
    void a_reading_written_more_than_an_hour_later_waits_too() {
        baked();
        String late = tell("cooling-reading", "ana", 80, 145, celsius("6.0"));
        assertEquals(Verdict.UNJUDGED, now().cooling());
        assertTrue(now().held());
        tell("accepted", "pat", 147, "{\"records\":[\"" + late + "\"]}");
        assertEquals(Verdict.WITHIN, now().cooling());
        assertFalse(now().held());
    }

    @Test
    void striking_out_a_measured_batch_needs_a_second_person_and_a_later_reading_brings_it_back() {
        tell("cook-reading", "ana", 50, PASSED);
        String struck = tell("struck-out", "ana", 55, "{\"reason\":\"begun twice\"}");
        assertTrue(now().held());
        tell("strike-out-agreed", "pat", 56, "{\"of\":\"" + struck + "\"}");
        assertEquals(Life.STRUCK_OUT, now().life());
        tell("cooling-reading", "ana", 60, celsius("60"));
        assertTrue(now().held());
        assertEquals(Life.COOLING, now().life());
    }

    @Test
    void the_parts_of_a_split_batch_inherit_and_the_parent_ends() {
        baked();
        String hot = Ids.uuid7(start, RANDOM);
        String cold = Ids.uuid7(start, RANDOM);
        tell("split", "ana", 60, "{\"parts\":[{\"batch\":\"" + hot + "\",\"code\":\"X-H\",\"trays\":1,\"pieces\":4,\"purpose\":\"hot\"},{\"batch\":\"" + cold
                + "\",\"code\":\"X-C\",\"trays\":1,\"pieces\":8,\"purpose\":\"cold\"}]}");
        assertEquals(Life.SPLIT, now().life());
        assertEquals(4, daybook.batch(hot).orElseThrow().pieces());
        assertEquals(Verdict.WITHIN, daybook.batch(cold).orElseThrow().cook());
        assertTrue(daybook.batch(cold).orElseThrow().held(), "its cooling was never measured in time");
    }

    @Test
    void an_impossible_value_is_kept_and_not_judged() {
        tell("cook-reading", "ana", 50, PASSED.replace("78.0", "742"));
        assertEquals(Verdict.UNJUDGED, now().cook());
        assertEquals(1, now().cookReadings().size());
    }
}
