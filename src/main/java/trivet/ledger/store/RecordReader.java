package trivet.ledger.store;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.erdtman.jcs.JsonCanonicalizer;
import trivet.ledger.BestTime;
import trivet.ledger.Entry;
import trivet.ledger.Fields;
import trivet.ledger.VersionRef;
import trivet.measure.Digest;
import trivet.measure.web.ProblemException;
import trivet.measure.web.ProblemException.FieldError;
import trivet.measure.web.StrictJson;

/** Reads the bytes of a record: refused when they are not of the published schema, and otherwise never thrown away. */
final class RecordReader {

    private static final int MOST_BYTES = 256 * 1024;
    private static final JsonMapper MAPPER = JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build();
    private static final TypeReference<Map<String, Object>> MAP = new TypeReference<>() {
    };
    private final JsonSchema schema;

    RecordReader() {
        try (InputStream in = RecordReader.class.getResourceAsStream("/schemas/record-1.json")) {
            schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
            schema.initializeValidators();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /** A new record, validated; its receive number is not known yet and is 0. */
    Entry received(byte[] body, Instant receivedAt, Optional<BestTime.Sending> sent) {
        if (body.length > MOST_BYTES) {
            throw new ProblemException(413, "", "A record has at most 256 KiB.");
        }
        JsonNode node = StrictJson.object(body);
        if (!"record-1".equals(node.path("schema").asText())) {
            throw new ProblemException(400, "schema", "The schema of a record is record-1, see /api/schemas/record-1.json.");
        }
        Set<ValidationMessage> wrong = schema.validate(node);
        if (!wrong.isEmpty()) {
            List<FieldError> errors = wrong.stream().limit(20).map(RecordReader::error).toList();
            throw new ProblemException(400, "The record is not of the form record-1, see /api/schemas/record-1.json.", errors);
        }
        try {
            return entry(0, MAPPER.convertValue(node, MAP), canonicalSha256(body), receivedAt, sent, Fields.NONE);
        } catch (java.time.DateTimeException impossible) {
            throw new ProblemException(400, "claimed_at", "This is not a moment that exists.");
        }
    }

    private static FieldError error(ValidationMessage message) {
        String field = message.getInstanceLocation().toString().replaceFirst("^\\$\\.?", "");
        String property = message.getProperty();
        String name = property == null ? field : field.isEmpty() ? property : field + "." + property;
        return new FieldError(name, message.getMessage().replaceFirst("^\\$[^:]*: ", ""));
    }

    private static String canonicalSha256(byte[] body) {
        try {
            return Digest.sha256(new JsonCanonicalizer(body).getEncodedUTF8());
        } catch (IOException broken) {
            throw new ProblemException(400, "", "The body has no canonical form by RFC 8785: " + broken.getMessage());
        }
    }

    /** A record that was kept before. */
    static Entry kept(long number, byte[] body, String sha256, Instant receivedAt, String verdict) {
        try {
            return entry(number, MAPPER.readValue(body, MAP), sha256, receivedAt, Optional.empty(), Fields.of(MAPPER.readValue(verdict, MAP)));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    static String json(Fields fields) {
        try {
            return MAPPER.writeValueAsString(fields.asMap());
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    private static Entry entry(long number, Map<String, Object> map, String sha256, Instant receivedAt, Optional<BestTime.Sending> sent, Fields verdict) {
        Fields fields = Fields.of(map);
        Fields clock = fields.object("device_clock").orElse(Fields.NONE);
        BestTime time = verdict.object("clock").map(BestTime::read).orElseGet(() -> BestTime.of(clock, instant(fields.text("claimed_at").orElseThrow()), receivedAt, sent));
        return new Entry(number, fields.text("id").orElseThrow(), fields.text("kind").orElseThrow(),
                fields.text("site").orElseThrow(), fields.text("device").orElseThrow(), fields.decimal("device_seq").orElseThrow().longValue(),
                fields.text("person").orElseThrow(), fields.text("batch"), fields.text("check"), version(fields, "plan"),
                version(fields, "rulebook"), fields.text("instrument"), fields.text("source").orElseThrow(), fields.text("sheet"),
                time, receivedAt,
                clock.text("zone").orElse("Z"), fields.object("data").orElse(Fields.NONE), sha256, verdict);
    }

    private static Instant instant(String text) {
        return OffsetDateTime.parse(text).toInstant().truncatedTo(ChronoUnit.MILLIS);
    }

    private static Optional<VersionRef> version(Fields fields, String name) {
        return fields.object(name).map(object -> new VersionRef(object.text("id").orElse(""),
                object.integer("version").orElse(0), object.text("sha256").orElse("")));
    }
}
