package trivet.ledger.store;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;

/** Instants as text of a fixed width, so that they sort as they follow. */
public final class Times {

    private static final DateTimeFormatter FORM = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.SSS'Z'").withZone(ZoneOffset.UTC);

    private Times() {
    }

    /** The text of a moment. */
    public static String text(Instant instant) {
        return FORM.format(instant);
    }
}
