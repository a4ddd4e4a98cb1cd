package trivet.deviation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import trivet.check.CoolingRun;
import trivet.check.Reading;
import trivet.limit.Verdict;

/** What is said of a cooling whose times rest on clocks that were wrong, set back or never compared. */
@QuarkusTest
class ClocksTest extends BatchBegun {

    private String clocks(Instant wall, String session, int tripSeconds) {
        return "{\"wall\":\"" + wall + "\",\"zone\":\"UTC\",\"offset_ms\":0,\"offset_age_s\":1,\"offset_trip_ms\":" + tripSeconds * 1000 + ",\"session\":\"" + session + "\"}";
    }

    private void told(String kind, double minute, String session, int tripSeconds, String data) {
        Instant at = start.plusSeconds(Math.round(minute * 60));
        tell(kind, "ana", "\"batch\":\"" + batch + "\",", at, clocks(at, session, tripSeconds), at, data);
    }

    private CoolingRun run() {
        return now().runs().get(0);
    }

    @Test
    void a_pass_within_the_doubt_of_two_clocks_says_so_and_stays_one() {
        tell("cook-reading", "ana", 50, PASSED);
        told("out-of-oven", 52, "a", 360, "{}");
        told("cooling-reading", 139, "b", 360, celsius("7.0"));
        assertEquals(Verdict.WITHIN, run().verdict().whole());
        assertEquals(Duration.ofSeconds(360), run().clockDoubt().orElseThrow());
        Reading reading = run().readings().get(0);
        assertTrue(reading.words().contains("6 min"), reading.words());
    }

    @Test
    void within_one_session_of_one_tablet_elapsed_time_is_sure() {
        tell("cook-reading", "ana", 50, PASSED);
        told("out-of-oven", 52, "a", 360, "{}");
        told("cooling-reading", 139, "a", 360, celsius("7.0"));
        assertEquals(Verdict.WITHIN, run().verdict().whole());
        assertTrue(run().clockDoubt().isEmpty());
    }

    @Test
    void a_pass_far_from_the_limit_needs_no_word_about_the_clocks() {
        tell("cook-reading", "ana", 50, PASSED);
        told("out-of-oven", 52, "a", 60, "{}");
        told("cooling-reading", 110, "b", 60, celsius("7.0"));
        assertTrue(run().clockDoubt().isEmpty());
    }

    @Test
    void a_breach_within_the_doubt_stays_a_breach_and_says_so() {
        tell("cook-reading", "ana", 50, PASSED);
        told("out-of-oven", 52, "a", 360, "{}");
        told("cooling-reading", 144, "b", 360, celsius("9.0"));
        assertEquals(Verdict.BREACHED, run().verdict().whole());
        assertTrue(run().clockDoubt().isPresent());
    }

    @Test
    void a_clock_set_back_a_day_in_the_middle_proves_no_cooling_and_gives_no_negative_time() {
        tell("cook-reading", "ana", 50, PASSED);
        told("out-of-oven", 52, "a", 0, "{}");
        Instant wrong = start.plus(Duration.ofMinutes(100)).minus(Duration.ofDays(1));
        tell("cooling-reading", "ana", "\"batch\":\"" + batch + "\",", wrong, clocks(wrong, "b", 0), wrong, celsius("6.0"));
        assertFalse(now().cooling() == Verdict.WITHIN, "a reading from before the oven passes nothing");
        assertTrue(run().readings().get(0).words().contains("set back") || run().readings().get(0).words().contains("before the batch came out"), run().readings().get(0).words());
    }

    @Test
    void a_clock_set_back_an_hour_does_not_shorten_a_cooling() {
        tell("cook-reading", "ana", 50, PASSED);
        told("out-of-oven", 52, "a", 0, "{}");
        told("cooling-reading", 130, "a", 0, celsius("20.0"));
        Instant wrong = start.plus(Duration.ofMinutes(85));
        tell("cooling-reading", "ana", "\"batch\":\"" + batch + "\",", wrong, clocks(wrong, "b", 0), wrong, celsius("7.0"));
        assertFalse(now().cooling() == Verdict.WITHIN, "measured after the deadline by a clock that was set back");
        assertTrue(run().readings().stream().anyMatch(reading -> reading.words().contains("set back")));
    }
}
