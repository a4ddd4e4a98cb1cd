package trivet.site;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

/** The business day ends at three, also where the clocks change (London, 25 October 2026). */
class SiteTest {

    private static final Site SITE = new Site("site", "Test", "", ZoneId.of("Europe/London"), LocalTime.of(3, 0), false);

    @Test
    void a_bake_before_three_belongs_to_the_day_before() {
        assertEquals(LocalDate.of(2026, 10, 1), SITE.dayOf(Instant.parse("2026-10-02T01:59:59Z")));
        assertEquals(LocalDate.of(2026, 10, 2), SITE.dayOf(Instant.parse("2026-10-02T02:00:00Z")));
    }

    @Test
    void the_day_before_the_clocks_go_back_has_25_hours() {
        LocalDate day = LocalDate.of(2026, 10, 24);
        assertEquals(Duration.ofHours(25), Duration.between(SITE.start(day), SITE.end(day)));
        assertEquals(day, SITE.dayOf(SITE.end(day).minusMillis(1)));
    }
}
