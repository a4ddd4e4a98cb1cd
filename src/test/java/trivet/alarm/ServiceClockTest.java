package trivet.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Proxy;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import trivet.ledger.Journal;

/** The service's own clock against what the processor counts and against the last record. */
class ServiceClockTest {

    private Instant wall = Instant.parse("2026-03-02T05:00:00Z");
    private long nanos;
    private Optional<Instant> received = Optional.empty();
    private final ServiceClock clock = clock();

    private ServiceClock clock() {
        ServiceClock one = new ServiceClock();
        one.clock = new Clock() {
            @Override
            public ZoneId getZone() {
                return ZoneOffset.UTC;
            }

            @Override
            public Clock withZone(ZoneId zone) {
                return this;
            }

            @Override
            public Instant instant() {
                return wall;
            }
        };
        one.nanos = () -> nanos;
        one.journal = (Journal) Proxy.newProxyInstance(Journal.class.getClassLoader(), new Class<?>[] {Journal.class}, (proxy, method, values) -> received);
        return one;
    }

    private Optional<Alarm> after(Duration shown, Duration counted) {
        wall = wall.plus(shown);
        nanos += counted.toNanos();
        return clock.look();
    }

    @Test
    void a_clock_that_goes_steadily_is_no_matter() {
        assertTrue(clock.look().isEmpty());
        for (int i = 0; i < 600; i++) {
            assertTrue(after(Duration.ofSeconds(60), Duration.ofMillis(60_050)).isEmpty(), "a drift of 50 ms a minute");
        }
    }

    @Test
    void one_that_was_set_is_told_once_under_one_id_and_no_longer_the_next_day() {
        clock.look();
        Alarm first = after(Duration.ofMinutes(-59), Duration.ofMinutes(1)).orElseThrow();
        assertTrue(first.words().contains("by -60 min"), first.words());
        assertEquals(first.id(), after(Duration.ofMinutes(1), Duration.ofMinutes(1)).orElseThrow().id());
        assertTrue(after(Duration.ofHours(12), Duration.ofHours(12)).isEmpty());
    }

    @Test
    void one_that_stands_before_the_last_record_is_told_even_after_a_new_start() {
        received = Optional.of(wall.plus(Duration.ofMinutes(90)));
        assertTrue(clock.look().orElseThrow().words().contains("90 min before"));
        assertTrue(after(Duration.ofMinutes(90), Duration.ofMinutes(90)).isEmpty());
    }
}
