package trivet.calc.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import trivet.measure.web.ProblemException;
import trivet.measure.web.StrictJson;

/** Reads the bodies of the models' calculations as doubles: 400 for a wrong shape, 422 for a value that cannot be, 413 for too many. */
final class ScienceBody {

    private static final int MOST = 10_000;
    private static final Set<String> NOT_FINITE = Set.of("nan", "infinity", "-infinity", "+infinity", "inf", "-inf", "+inf");
    private final JsonNode root;
    private final String path;

    ScienceBody(byte[] bytes, String... known) {
        this(StrictJson.object(bytes), "", known);
    }

    private ScienceBody(JsonNode root, String path, String... known) {
        this.root = root;
        this.path = path;
        StrictJson.only(root, path, Set.of(known));
    }

    /** A curve: times ascending, and temperatures in °C. */
    record Points(double[] times, double[] celsius) {
    }

    private JsonNode node(String field) {
        JsonNode node = root.get(field);
        return node == null || node.isNull() ? null : node;
    }

    private ProblemException missing(String field) {
        return new ProblemException(400, path + field, "This field is missing.");
    }

    String text(String field, String otherwise, String... allowed) {
        JsonNode node = node(field);
        if (node == null && otherwise != null) {
            return otherwise;
        }
        if (node == null) {
            throw missing(field);
        }
        if (!node.isTextual()) {
            throw new ProblemException(400, path + field, "Text is expected here.");
        }
        if (allowed.length > 0 && !List.of(allowed).contains(node.textValue())) {
            throw new ProblemException(422, path + field, "One of " + String.join(", ", allowed) + " is expected here.");
        }
        return node.textValue();
    }

    Optional<String> optionalText(String field, String... allowed) {
        return node(field) == null ? Optional.empty() : Optional.of(text(field, null, allowed));
    }

    boolean flag(String field, boolean otherwise) {
        JsonNode node = node(field);
        if (node != null && !node.isBoolean()) {
            throw new ProblemException(400, path + field, "true or false is expected here.");
        }
        return node == null ? otherwise : node.booleanValue();
    }

    /** A number that must be there. */
    double number(String field) {
        if (node(field) == null) {
            throw missing(field);
        }
        return number(node(field), path + field, false);
    }

    /** A number, or another where it is missing or null. */
    double number(String field, double otherwise) {
        return node(field) == null ? otherwise : number(node(field), path + field, false);
    }

    /** A temperature that must be there; it may be text. */
    double temperature(String field) {
        if (node(field) == null) {
            throw missing(field);
        }
        return number(node(field), path + field, true);
    }

    /** A temperature, or another number where it is missing or null. */
    double temperature(String field, double otherwise) {
        return node(field) == null ? otherwise : number(node(field), path + field, true);
    }

    private static double number(JsonNode node, String field, boolean textAllowed) {
        double value;
        if (node.isTextual()) {
            String text = node.textValue().strip();
            if (NOT_FINITE.contains(text.toLowerCase(Locale.ROOT))) {
                throw new ProblemException(422, field, "A finite number is expected here.");
            }
            if (!textAllowed || !text.matches("[-+]?\\d{1,15}([.,]\\d{1,20})?")) {
                throw new ProblemException(400, field, "A number is expected here.");
            }
            value = Double.parseDouble(text.replace(',', '.'));
        } else if (node.isNumber()) {
            value = node.doubleValue();
        } else {
            throw new ProblemException(400, field, "A number is expected here.");
        }
        if (!Double.isFinite(value)) {
            throw new ProblemException(422, field, "A finite number is expected here.");
        }
        return value;
    }

    private JsonNode list(String field, int least) {
        JsonNode node = node(field);
        if (node == null) {
            throw missing(field);
        }
        if (!node.isArray()) {
            throw new ProblemException(400, path + field, "A list is expected here.");
        }
        if (node.size() < least) {
            throw new ProblemException(422, path + field, least == 1 ? "Give at least one." : "At least " + least + " are needed.");
        }
        if (node.size() > MOST) {
            throw new ProblemException(413, path + field, "More than 10,000 are too many. Send fewer.");
        }
        return node;
    }

    double[] numbers(String field, int least) {
        JsonNode list = list(field, least);
        double[] values = new double[list.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = number(list.get(i), path + field + "[" + i + "]", false);
        }
        return values;
    }

    double[] optionalNumbers(String field) {
        return node(field) == null ? new double[0] : numbers(field, 0);
    }

    /** A list of texts, each one of those allowed. */
    Optional<List<String>> texts(String field, List<String> allowed) {
        if (node(field) == null) {
            return Optional.empty();
        }
        List<String> texts = new ArrayList<>();
        for (JsonNode item : list(field, 0)) {
            if (!item.isTextual() || !allowed.contains(item.textValue())) {
                throw new ProblemException(item.isTextual() ? 422 : 400, path + field, "Each is one of " + String.join(", ", allowed) + ".");
            }
            texts.add(item.textValue());
        }
        return Optional.of(texts);
    }

    Optional<ScienceBody> object(String field, String... known) {
        JsonNode node = node(field);
        if (node == null) {
            return Optional.empty();
        }
        if (!node.isObject()) {
            throw new ProblemException(400, path + field, "An object is expected here.");
        }
        return Optional.of(new ScienceBody(node, path + field + ".", known));
    }

    List<ScienceBody> objects(String field, int least, String... known) {
        List<ScienceBody> objects = new ArrayList<>();
        JsonNode list = list(field, least);
        for (int i = 0; i < list.size(); i++) {
            String at = path + field + "[" + i + "]";
            if (!list.get(i).isObject()) {
                throw new ProblemException(400, at, "An object is expected here.");
            }
            objects.add(new ScienceBody(list.get(i), at + ".", known));
        }
        return objects;
    }

    /** A curve in any order; equal times are refused. */
    Points points(String field, String time, int least) {
        List<ScienceBody> list = objects(field, least, time, "celsius", "fahrenheit");
        double[][] rows = new double[list.size()][];
        Set<Double> times = new HashSet<>();
        for (int i = 0; i < rows.length; i++) {
            ScienceBody one = list.get(i);
            double at = one.number(time);
            if (!times.add(at == 0 ? 0.0 : at)) {
                throw new ProblemException(422, one.path + time, "Two readings have the same time. Keep one of them.");
            }
            if (one.node("celsius") != null && one.node("fahrenheit") != null) {
                throw new ProblemException(422, one.path + "fahrenheit", "Give celsius or fahrenheit, as it was read, not both.");
            }
            double celsius = one.node("fahrenheit") != null ? (one.temperature("fahrenheit") - 32) * 5 / 9 : one.temperature("celsius");
            if (celsius < -273.15) {
                throw new ProblemException(422, one.path + "celsius", "Nothing is colder than -273.15 °C.");
            }
            rows[i] = new double[] {at, celsius};
        }
        java.util.Arrays.sort(rows, Comparator.comparingDouble(row -> row[0]));
        double[] x = new double[rows.length];
        double[] y = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            x[i] = rows[i][0];
            y[i] = rows[i][1];
        }
        return new Points(x, y);
    }
}
