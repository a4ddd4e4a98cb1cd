package trivet.measure.web;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/** Reads a JSON object strictly: no duplicate names, no trailing text, numbers as exact decimals, bounded depth and size. */
public final class StrictJson {

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .nodeFactory(JsonNodeFactory.withExactBigDecimals(true))
            .build();

    /** The most bytes of a body. */
    public static final int MOST_BYTES = 1 << 20;

    private StrictJson() {
    }

    /** The object in the bytes; 413 when they are too many, 400 when they are no JSON object. */
    public static JsonNode object(byte[] bytes) {
        if (bytes.length > MOST_BYTES) {
            throw new ProblemException(413, "", "The body is larger than 1 MiB. Send less at a time.");
        }
        JsonNode node = any(bytes);
        if (!node.isObject()) {
            throw new ProblemException(400, "", "A JSON object is expected.");
        }
        return node;
    }

    /** Whatever JSON is in the bytes; 400 when it is none. */
    public static JsonNode any(byte[] bytes) {
        try {
            JsonNode node = MAPPER.readTree(bytes);
            if (node == null || node.isMissingNode()) {
                throw new ProblemException(400, "", "The body is empty. A JSON object is expected.");
            }
            return node;
        } catch (JsonProcessingException broken) {
            int line = broken.getLocation() == null ? 1 : Math.max(1, broken.getLocation().getLineNr());
            int column = broken.getLocation() == null ? 1 : Math.max(1, broken.getLocation().getColumnNr());
            throw new ProblemException(400, "", "The body is not valid JSON at line " + line + ", column " + column + ".");
        } catch (IOException | RuntimeException broken) {
            if (broken instanceof ProblemException refusal) {
                throw refusal;
            }
            throw new ProblemException(400, "", "The body is not valid JSON.");
        }
    }

    /** The bytes of each item of a JSON array as they were sent, without what stands between them. */
    public static List<byte[]> items(byte[] array) {
        List<byte[]> items = new ArrayList<>();
        try (JsonParser parser = MAPPER.getFactory().createParser(array)) {
            parser.nextToken();
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                int from = (int) parser.currentTokenLocation().getByteOffset();
                parser.skipChildren();
                parser.finishToken();
                items.add(Arrays.copyOfRange(array, from, (int) parser.currentLocation().getByteOffset()));
            }
            return items;
        } catch (IOException | IllegalArgumentException broken) {
            throw new ProblemException(400, "", "The body is not a JSON array in UTF-8.");
        }
    }

    /** Refuses a name that is not among the known ones. */
    public static void only(JsonNode object, String path, Set<String> known) {
        object.fieldNames().forEachRemaining(name -> {
            if (!known.contains(name)) {
                throw new ProblemException(400, path + name, "This field is not known here. Known are: "
                        + String.join(", ", known.stream().sorted().toList()) + ".");
            }
        });
    }
}
