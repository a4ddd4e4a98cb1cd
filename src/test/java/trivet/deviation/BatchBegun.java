package trivet.deviation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import trivet.ledger.Ids;
import trivet.ledger.Ledger;

/** A batch begun 150 min ago at the demo bakery, and the telling of records about it. */
abstract class BatchBegun {

    static final Random RANDOM = new Random(11);
    static final String PASSED = "{\"temperature\":{\"value\":\"78.0\",\"unit\":\"C\"},\"held_seconds\":30,\"piece\":1}";
    private static long sequence = 500_000;

    @Inject
    Ledger ledger;
    @Inject
    Daybook daybook;
    @Inject
    Clock clock;
    String batch;
    Instant start;

    @BeforeEach
    void begin() {
        start = clock.instant().minus(Duration.ofMinutes(150)).truncatedTo(ChronoUnit.SECONDS);
        begin("deep-quiche");
    }

    void begin(String product) {
        batch = Ids.uuid7(start, RANDOM);
        tell("batch-started", "ana", 0, "{\"product\":\"" + product + "\",\"code\":\"A-" + ++sequence + "\",\"line\":\"wheat\",\"trays\":1,\"pieces\":12,\"oven\":\"oven-1\"}");
    }

    String tell(String kind, String person, int minute, String data) {
        return tell(kind, person, minute, minute, data);
    }

    String tell(String kind, String person, int minute, int entered, String data) {
        return tell(kind, person, "\"batch\":\"" + batch + "\",", minute, entered, data);
    }

    /** A record with further fields of its head, each followed by a comma. */
    String tell(String kind, String person, String head, int minute, int entered, String data) {
        Instant typed = start.plus(Duration.ofMinutes(entered));
        return tell(kind, person, head, start.plus(Duration.ofMinutes(minute)), "{\"wall\":\"" + typed + "\",\"zone\":\"UTC\"}", typed, data);
    }

    /** A record with the clocks of its tablet as they were. */
    String tell(String kind, String person, String head, Instant at, String clocks, Instant typed, String data) {
        return tell("A", kind, person, head, at, clocks, typed, data);
    }

    /** A record of one of several tablets. */
    String tell(String device, String kind, String person, String head, Instant at, String clocks, Instant typed, String data) {
        String id = Ids.uuid7(typed, RANDOM);
        String json = "{\"schema\":\"record-1\",\"id\":\"" + id + "\",\"kind\":\"" + kind + "\",\"site\":\"site\",\"device\":\"" + device + "\",\"device_seq\":" + ++sequence + ",\"person\":\"" + person
                + "\"," + head + "\"source\":\"typed\",\"claimed_at\":\"" + at + "\",\"device_clock\":" + clocks + ",\"data\":" + data + "}";
        assertEquals(Ledger.Outcome.KEPT, ledger.put(id, json.getBytes(StandardCharsets.UTF_8), device, java.util.Optional.empty()).outcome());
        return id;
    }

    static String celsius(String value) {
        return "{\"temperature\":{\"value\":\"" + value + "\",\"unit\":\"C\"}}";
    }

    BatchRecord now() {
        return daybook.batch(batch).orElseThrow();
    }

    void baked() {
        tell("cook-reading", "ana", 50, PASSED);
        tell("out-of-oven", "ana", 52, "{}");
    }

    static String answer(String deviation, String disposition) {
        return "{\"deviation\":\"" + deviation + "\",\"what_happened\":\"slow\",\"cause\":\"rack full\",\"control_restored\":\"chiller\",\"disposition\":\"" + disposition
                + "\",\"decided_by\":\"ana\",\"prevention\":\"fewer trays\"}";
    }
}
