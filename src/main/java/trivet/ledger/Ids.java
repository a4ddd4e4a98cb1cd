package trivet.ledger;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Random;
import java.util.UUID;
import trivet.measure.Digest;

/** Making of identifiers by RFC 9562. */
public final class Ids {

    private Ids() {
    }

    /** A UUIDv7: 48 bits of Unix milliseconds, then random bits (RFC 9562, 5.7). */
    public static String uuid7(Instant at, Random random) {
        long high = (at.toEpochMilli() << 16) | 0x7000L | (random.nextLong() & 0x0fffL);
        long low = (random.nextLong() & 0x3fffffffffffffffL) | 0x8000000000000000L;
        return new UUID(high, low).toString();
    }

    /** A UUIDv8 from the SHA-256 of a name (RFC 9562, 5.8): the same name gives the same id on every device. */
    public static String derived(String name) {
        ByteBuffer bytes = ByteBuffer.wrap(Digest.raw(name.getBytes(StandardCharsets.UTF_8)));
        long high = (bytes.getLong() & 0xffffffffffff0fffL) | 0x8000L;
        long low = (bytes.getLong() & 0x3fffffffffffffffL) | 0x8000000000000000L;
        return new UUID(high, low).toString();
    }
}
