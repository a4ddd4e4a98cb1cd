package trivet.demo;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import trivet.ledger.Ids;

/** Records of the demo in the form in which a tablet sends them, in the order of their entry. */
final class Tape {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private final ZoneId zone;
    private final Random random;
    private final List<Line> lines = new ArrayList<>();
    private String probe = "P1";

    /** One record before it has its number of sequence. */
    record Line(String id, String kind, String person, String batch, String instrument, Instant claimed, Instant entered, Map<String, Object> data) {
    }

    Tape(ZoneId zone, Random random) {
        this.zone = zone;
        this.random = random;
    }

    String add(String kind, String person, String batch, String instrument, Instant claimed, Instant entered, Map<String, Object> data) {
        String id = Ids.uuid7(entered, random);
        lines.add(new Line(id, kind, person, batch, instrument, claimed, entered, data));
        return id;
    }

    String add(String kind, String person, String batch, Instant at, Map<String, Object> data) {
        String instrument = data.containsKey("temperature") && !kind.equals("unit-reading") ? probe : null;
        return add(kind, person, batch, instrument, at, at.plusSeconds(20), data);
    }

    /** Takes another probe for what follows. */
    void take(String otherProbe) {
        probe = otherProbe;
    }

    /** The probe in hand. */
    String probe() {
        return probe;
    }

    static Map<String, Object> celsius(double value) {
        return Map.of("value", String.format(java.util.Locale.ROOT, "%.1f", value), "unit", "C");
    }

    /** The lines in the order of entry. */
    List<Line> ordered() {
        return lines.stream().sorted(java.util.Comparator.comparing(Line::entered)).toList();
    }

    byte[] json(Line line, long sequence) {
        Map<String, Object> record = new LinkedHashMap<>();
        record.put("schema", "record-1");
        record.put("id", line.id());
        record.put("kind", line.kind());
        record.put("site", "site");
        record.put("device", "A");
        record.put("device_seq", sequence);
        record.put("person", line.person());
        record.put("batch", line.batch());
        record.put("instrument", line.instrument());
        record.put("source", "typed");
        record.put("claimed_at", line.claimed().toString());
        Map<String, Object> clock = new HashMap<>();
        clock.put("wall", java.time.format.DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(line.entered().atZone(zone)));
        clock.put("zone", zone.getId());
        clock.put("offset_ms", 0);
        clock.put("offset_age_s", 5);
        clock.put("offset_trip_ms", 40);
        clock.put("session", "demo-" + line.entered().atZone(zone).toLocalDate());
        record.put("device_clock", clock);
        record.put("data", line.data());
        try {
            return MAPPER.writeValueAsBytes(record);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }
}
