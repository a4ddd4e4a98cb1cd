package trivet.calc.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import trivet.cooling.CookPiece;
import trivet.cooling.CoolingReading;
import trivet.measure.Scale;
import trivet.measure.Temperature;
import trivet.measure.web.ProblemException;
import trivet.measure.web.StrictJson;

/** Reads the bodies of the calculations: 400 for a wrong shape, 422 for a value that cannot be, 413 for too many. */
final class CalcBody {

    private static final int MOST_READINGS = 10_000;
    private static final Set<String> NOT_FINITE = Set.of("nan", "infinity", "-infinity", "+infinity", "inf", "-inf");
    private final JsonNode root;

    CalcBody(byte[] bytes, Set<String> known) {
        root = StrictJson.object(bytes);
        StrictJson.only(root, "", known);
    }

    String text(String field) {
        return optionalText(field).orElseThrow(() -> new ProblemException(400, field, "This field is missing."));
    }

    Optional<String> optionalText(String field) {
        JsonNode node = root.get(field);
        if (node == null || node.isNull()) {
            return Optional.empty();
        }
        if (!node.isTextual()) {
            throw new ProblemException(400, field, "Text is expected here.");
        }
        return Optional.of(node.textValue());
    }

    Optional<BigDecimal> optionalMinute(String field) {
        JsonNode node = root.get(field);
        return node == null || node.isNull() ? Optional.empty() : Optional.of(number(node, field));
    }

    List<CoolingReading> readings() {
        List<CoolingReading> readings = new ArrayList<>();
        Set<BigDecimal> minutes = new HashSet<>();
        int i = 0;
        for (JsonNode node : array("readings")) {
            String at = "readings[" + i++ + "]";
            object(node, at, Set.of("minute", "celsius", "fahrenheit"));
            JsonNode minute = node.get("minute");
            if (minute == null) {
                throw new ProblemException(400, at + ".minute", "This field is missing.");
            }
            BigDecimal value = number(minute, at + ".minute");
            if (!minutes.add(value.stripTrailingZeros())) {
                throw new ProblemException(422, at + ".minute", "Two readings have the same minute. Keep one of them.");
            }
            readings.add(new CoolingReading(value, temperature(node, at)));
        }
        return readings;
    }

    List<CookPiece> pieces() {
        List<CookPiece> pieces = new ArrayList<>();
        int i = 0;
        for (JsonNode node : array("pieces")) {
            String at = "pieces[" + i++ + "]";
            object(node, at, Set.of("celsius", "fahrenheit", "held_seconds"));
            JsonNode held = node.get("held_seconds");
            Optional<BigDecimal> seconds = held == null || held.isNull() ? Optional.empty()
                    : Optional.of(number(held, at + ".held_seconds"));
            if (seconds.isPresent() && seconds.get().signum() < 0) {
                throw new ProblemException(422, at + ".held_seconds", "A hold is not shorter than 0 seconds.");
            }
            pieces.add(new CookPiece(temperature(node, at), seconds));
        }
        return pieces;
    }

    private JsonNode array(String field) {
        JsonNode node = root.get(field);
        if (node == null) {
            throw new ProblemException(400, field, "This field is missing.");
        }
        if (!node.isArray()) {
            throw new ProblemException(400, field, "A list is expected here.");
        }
        if (node.isEmpty()) {
            throw new ProblemException(422, field, "There is nothing to judge. Give at least one.");
        }
        if (node.size() > MOST_READINGS) {
            throw new ProblemException(413, field, "More than 10,000 are too many. Send fewer.");
        }
        return node;
    }

    private static void object(JsonNode node, String at, Set<String> known) {
        if (!node.isObject()) {
            throw new ProblemException(400, at, "An object is expected here.");
        }
        StrictJson.only(node, at + ".", known);
    }

    private static BigDecimal number(JsonNode node, String field) {
        if (node.isTextual() && NOT_FINITE.contains(node.textValue().strip().toLowerCase(java.util.Locale.ROOT))) {
            throw new ProblemException(422, field, "A finite number is expected here.");
        }
        if (!node.isNumber()) {
            throw new ProblemException(400, field, "A number is expected here.");
        }
        BigDecimal value = node.decimalValue();
        if (value.signum() == 0) {
            return BigDecimal.ZERO;
        }
        long digitsBefore = (long) value.precision() - value.scale();
        if (digitsBefore > 9 || value.scale() > 12) {
            throw new ProblemException(422, field, "At most nine digits before and twelve after the point make sense here.");
        }
        return value;
    }

    private static Temperature temperature(JsonNode node, String at) {
        JsonNode celsius = node.get("celsius");
        JsonNode fahrenheit = node.get("fahrenheit");
        if (celsius == null && fahrenheit == null) {
            throw new ProblemException(400, at + ".celsius", "This field is missing: give celsius or fahrenheit.");
        }
        if (celsius != null && fahrenheit != null) {
            throw new ProblemException(422, at + ".fahrenheit", "Give celsius or fahrenheit, as it was read, not both.");
        }
        Scale scale = celsius != null ? Scale.CELSIUS : Scale.FAHRENHEIT;
        String field = at + (celsius != null ? ".celsius" : ".fahrenheit");
        JsonNode value = celsius != null ? celsius : fahrenheit;
        try {
            return value.isTextual() ? Temperature.parse(value.textValue(), scale) : new Temperature(number(value, field), scale);
        } catch (IllegalArgumentException refused) {
            throw new ProblemException(422, field, refused.getMessage());
        }
    }
}
