package trivet.form.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import trivet.form.Parts;
import trivet.limit.file.YamlNode;

/**
 * Writes a record as YAML in one way only, and reads one back, so that what was written reads and writes to the same bytes. Ids and
 * whole numbers stand plain; every other text stands in double quotes, so that no YAML reader takes it for something else.
 */
public final class PartsFile {

    private static final Set<String> TRAPS = Set.of("yes", "no", "on", "off", "true", "false", "null", "y", "n");

    private PartsFile() {
    }

    /** Reads the place of a record; unknown keys and values that their kind refuses become problems at their lines. */
    public static <T extends Record> T read(Class<T> type, YamlNode node) {
        Map<String, Object> tree = tree(type, node);
        return Parts.of(type, tree, (key, sentence) -> {
        });
    }

    private static Map<String, Object> tree(Class<? extends Record> type, YamlNode node) {
        List<Parts.Field> fields = Parts.fields(type);
        node.only(fields.stream().map(Parts.Field::key).collect(Collectors.toSet()));
        Map<String, Object> tree = new LinkedHashMap<>();
        for (Parts.Field field : fields) {
            if (!node.has(field.key())) {
                continue;
            }
            if (field.list() && field.record() != null) {
                List<Map<String, Object>> items = new ArrayList<>();
                node.list(field.key()).forEach(item -> items.add(tree(field.record(), item)));
                tree.put(field.key(), items);
            } else if (field.list()) {
                List<String> texts = node.texts(field.key());
                texts.forEach(text -> check(node, field, text));
                tree.put(field.key(), texts);
            } else if (field.record() != null) {
                node.child(field.key()).ifPresent(child -> tree.put(field.key(), tree(field.record(), child)));
            } else {
                node.text(field.key()).ifPresent(text -> {
                    check(node, field, text);
                    tree.put(field.key(), text);
                });
            }
        }
        return tree;
    }

    private static void check(YamlNode node, Parts.Field field, String text) {
        try {
            field.kind().check(text, field.choices());
        } catch (IllegalArgumentException refused) {
            node.problem(field.key(), refused.getMessage());
        }
    }

    /** The YAML of a record, ending with a line break. */
    public static String write(Record record) {
        StringBuilder yaml = new StringBuilder();
        map(yaml, Parts.tree(record), "", "");
        return yaml.toString();
    }

    @SuppressWarnings("unchecked")
    private static void map(StringBuilder yaml, Map<String, Object> tree, String first, String indent) {
        String lead = first;
        for (Map.Entry<String, Object> entry : tree.entrySet()) {
            yaml.append(lead).append(entry.getKey()).append(':');
            lead = indent;
            if (entry.getValue() instanceof Map<?, ?> inner) {
                yaml.append('\n');
                map(yaml, (Map<String, Object>) inner, indent + "  ", indent + "  ");
            } else if (entry.getValue() instanceof List<?> list && list.get(0) instanceof Map) {
                yaml.append('\n');
                for (Object item : list) {
                    map(yaml, (Map<String, Object>) item, indent + "  - ", indent + "    ");
                }
            } else if (entry.getValue() instanceof List<?> list) {
                if (list.stream().allMatch(item -> plain((String) item))) {
                    yaml.append(" [").append(list.stream().map(String::valueOf).collect(Collectors.joining(", "))).append("]\n");
                } else {
                    yaml.append('\n');
                    list.forEach(item -> yaml.append(indent).append("  - ").append(scalar((String) item)).append('\n'));
                }
            } else {
                yaml.append(' ').append(scalar((String) entry.getValue())).append('\n');
            }
        }
    }

    private static boolean plain(String text) {
        return text.matches("[a-z][a-z0-9-]*|0|[1-9][0-9]{0,6}") && !TRAPS.contains(text);
    }

    /** A text as a YAML scalar. */
    static String scalar(String text) {
        if (plain(text) || text.equals("true") || text.equals("false")) {
            return text;
        }
        StringBuilder quoted = new StringBuilder("\"");
        text.codePoints().forEach(c -> {
            switch (c) {
                case '"' -> quoted.append("\\\"");
                case '\\' -> quoted.append("\\\\");
                case '\n' -> quoted.append("\\n");
                case '\t' -> quoted.append("\\t");
                default -> {
                    if (c < 0x20 || (c >= 0x7f && c < 0xa0) || c == 0xfeff || c == 0x2028 || c == 0x2029 || (c >= 0xd800 && c < 0xe000)) {
                        quoted.append(String.format("\\u%04x", c));
                    } else if (c > 0xffff) {
                        quoted.append(String.format("\\U%08x", c));
                    } else {
                        quoted.appendCodePoint(c);
                    }
                }
            }
        });
        return quoted.append('"').toString();
    }
}
