package trivet.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import trivet.ledger.BestTime.Mark;
import trivet.ledger.BestTime.Sending;

/** The best time of a record by the clocks of its tablet; rules of the trade without a source. */
class BestTimeTest {

    private static final Instant TRUE = Instant.parse("2026-11-26T05:10:00Z");

    private static Fields clock(Instant wall, Object... more) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("wall", wall.toString());
        for (int i = 0; i < more.length; i += 2) {
            map.put((String) more[i], more[i + 1] instanceof Number number ? new BigDecimal(number.toString()) : more[i + 1]);
        }
        return Fields.of(map);
    }

    @Test
    void a_clock_three_hours_ahead_that_was_compared_is_set_right_and_marked() {
        Instant wall = TRUE.plus(Duration.ofHours(3));
        BestTime time = BestTime.of(clock(wall, "offset_ms", -3 * 3600_000, "offset_age_s", 7200, "offset_trip_ms", 80, "session", "a"), TRUE, TRUE.plusSeconds(20000), Optional.empty());
        assertEquals(TRUE, time.claimed());
        assertEquals(TRUE, time.entered());
        assertEquals(Optional.of(Duration.ofMillis(40 + 720)), time.uncertainty());
        assertEquals(Set.of(Mark.OFF), time.marks());
        assertTrue(time.words().contains("3 h 0 min ahead"), time.words());
    }

    @Test
    void a_clock_never_compared_is_set_right_by_the_monotonic_one_at_sending() {
        Instant wall = TRUE.plus(Duration.ofHours(3));
        Instant received = TRUE.plus(Duration.ofHours(4));
        Sending sent = new Sending("a", BigDecimal.valueOf(1000 + 4 * 3600_000L), wall.plus(Duration.ofHours(4)));
        BestTime time = BestTime.of(clock(wall, "session", "a", "monotonic_ms", 1000), wall, received, Optional.of(sent));
        assertEquals(TRUE, time.entered());
        assertEquals(TRUE, time.claimed(), "the moment of typing moves with it");
        assertEquals(Optional.of(Duration.ofHours(-3)), time.offset());
        assertTrue(time.uncertainty().orElseThrow().compareTo(Duration.ofSeconds(5)) < 0);
        assertEquals(Set.of(Mark.OFF), time.marks());
    }

    @Test
    void a_time_that_the_person_stated_stays_as_stated() {
        Instant wall = TRUE.plus(Duration.ofHours(3));
        Instant stated = TRUE.minus(Duration.ofMinutes(20));
        Sending sent = new Sending("a", BigDecimal.valueOf(61_000), wall.plusSeconds(60));
        BestTime time = BestTime.of(clock(wall, "session", "a", "monotonic_ms", 1000), stated, TRUE.plusSeconds(60), Optional.of(sent));
        assertEquals(stated, time.claimed());
        assertEquals(TRUE, time.entered());
        assertTrue(time.stated());
    }

    @Test
    void a_sleep_that_the_monotonic_clock_did_not_count_is_the_uncertainty() {
        Instant received = TRUE.plus(Duration.ofHours(4));
        Sending sent = new Sending("a", BigDecimal.valueOf(3600_000L), TRUE.plus(Duration.ofHours(4)));
        BestTime time = BestTime.of(clock(TRUE, "session", "a", "monotonic_ms", 0), TRUE, received, Optional.of(sent));
        assertEquals(TRUE, time.entered());
        assertTrue(time.uncertainty().orElseThrow().compareTo(Duration.ofHours(3)) >= 0);
        assertEquals(Set.of(Mark.UNSURE), time.marks());
    }

    @Test
    void a_wall_clock_set_back_a_day_before_sending_gives_no_time_after_the_receipt() {
        Instant received = TRUE.plus(Duration.ofHours(1));
        Sending sent = new Sending("b", BigDecimal.valueOf(5), TRUE.minus(Duration.ofHours(23)));
        BestTime time = BestTime.of(clock(TRUE, "session", "a", "monotonic_ms", 99), TRUE, received, Optional.of(sent));
        assertEquals(received, time.entered(), "never a negative time before sending");
        assertEquals(Optional.empty(), time.uncertainty());
        assertTrue(time.marks().contains(Mark.UNSURE));
    }

    @Test
    void without_any_comparison_the_time_is_as_shown_and_says_so() {
        BestTime time = BestTime.of(clock(TRUE), TRUE, TRUE.plusSeconds(9), Optional.empty());
        assertEquals(TRUE, time.claimed());
        assertEquals(Set.of(Mark.NEVER_COMPARED), time.marks());
    }

    @Test
    void a_clock_set_back_while_the_page_was_open_is_marked_and_its_size_is_the_uncertainty() {
        BestTime time = BestTime.of(clock(TRUE.minus(Duration.ofDays(1)), "offset_ms", 0, "offset_age_s", 60, "offset_trip_ms", 20, "set_back_ms", 86_400_000, "session", "a"), TRUE, TRUE.plusSeconds(5), Optional.empty());
        assertEquals(TRUE, time.entered());
        assertTrue(time.marks().contains(Mark.SET_BACK));
        assertTrue(time.uncertainty().orElseThrow().compareTo(Duration.ofDays(1)) >= 0);
    }

    @Test
    void what_is_kept_reads_back_the_same() {
        BestTime time = BestTime.of(clock(TRUE, "offset_ms", 1500, "offset_age_s", 3, "offset_trip_ms", 20, "session", "a"), TRUE.plusMillis(1500), TRUE.plusSeconds(5), Optional.empty());
        assertEquals(time, BestTime.read(Fields.of(time.kept())));
    }

    @Test
    void an_impossible_offset_is_not_followed() {
        BestTime time = BestTime.of(clock(TRUE, "offset_ms", 9e18), TRUE, TRUE, Optional.empty());
        assertEquals(TRUE, time.entered());
        assertEquals(Optional.empty(), Sending.read("a;x;2026"));
        assertEquals(Optional.empty(), Sending.read("a;1e999999999;" + TRUE));
        assertEquals(Optional.of("a"), Sending.read("a;12.5;" + TRUE).map(Sending::session));
        BestTime tiny = BestTime.of(clock(TRUE, "session", "a", "monotonic_ms", new BigDecimal("1e-999999")), TRUE, TRUE, Sending.read("a;12;" + TRUE));
        assertEquals(TRUE, tiny.entered(), "a number of a million places is not reckoned with");
        assertEquals(Optional.empty(), Sending.read(null));
    }
}
