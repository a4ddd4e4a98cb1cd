package trivet.bench;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import trivet.ledger.Ids;

/** Records in the form of a tablet's, for the benchmarks. */
final class BenchRecords {

    private static final AtomicLong SEQUENCE = new AtomicLong(1_000_000);

    private BenchRecords() {
    }

    static String json(String id, String kind, String batch, Instant at, String data) {
        return "{\"schema\":\"record-1\",\"id\":\"" + id + "\",\"kind\":\"" + kind + "\",\"site\":\"site\",\"device\":\"A\",\"device_seq\":" + SEQUENCE.incrementAndGet()
                + ",\"person\":\"ana\"," + (batch == null ? "" : "\"batch\":\"" + batch + "\",") + "\"instrument\":\"P1\",\"source\":\"typed\",\"claimed_at\":\"" + at
                + "\",\"device_clock\":{\"wall\":\"" + at + "\",\"zone\":\"UTC\",\"monotonic_ms\":12345.5,\"offset_ms\":0,\"offset_age_s\":5},\"data\":" + data + "}";
    }

    /** A fridge reading. */
    static byte[] reading(String id, Instant at) {
        return json(id, "unit-reading", null, at, "{\"unit\":\"fridge-1\",\"temperature\":{\"value\":\"4.2\",\"unit\":\"C\"}}").getBytes(StandardCharsets.UTF_8);
    }

    static String id(Random random) {
        return Ids.uuid7(Instant.now(), random);
    }
}
