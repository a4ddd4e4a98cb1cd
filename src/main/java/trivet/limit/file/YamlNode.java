package trivet.limit.file;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import trivet.limit.Problem;

/** A place in a YAML file that knows its line, and collects what is wrong with the file while it is being read. */
public final class YamlNode {

    private final String file;
    private final Node node;
    private final int line;
    private final List<Problem> problems;
    private final Map<String, Node> children = new LinkedHashMap<>();

    private YamlNode(String file, Node node, int line, List<Problem> problems) {
        this.file = file;
        this.node = node;
        this.line = line;
        this.problems = problems;
        if (node instanceof MappingNode mapping) {
            for (NodeTuple tuple : mapping.getValue()) {
                String key = tuple.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "?";
                if (children.put(key, tuple.getValueNode()) != null) {
                    problems.add(new Problem(file, lineOf(tuple.getKeyNode()), "The key \"" + key + "\" stands here twice."));
                }
            }
        }
    }

    /** Reads a whole file; a text that is no YAML gives one problem and an empty place. */
    public static YamlNode read(String file, String text, List<Problem> problems) {
        LoaderOptions options = new LoaderOptions();
        options.setMaxAliasesForCollections(0);
        options.setNestingDepthLimit(20);
        Node root = null;
        try {
            root = new Yaml(options).compose(new StringReader(text));
        } catch (MarkedYAMLException broken) {
            int at = broken.getProblemMark() == null ? 1 : broken.getProblemMark().getLine() + 1;
            problems.add(new Problem(file, at, "This is not YAML: " + broken.getProblem() + "."));
        } catch (RuntimeException broken) {
            problems.add(new Problem(file, 1, "This is not YAML: " + broken.getMessage() + "."));
        }
        return new YamlNode(file, root, 1, problems);
    }

    private static int lineOf(Node node) {
        return node.getStartMark().getLine() + 1;
    }

    /** Notes something wrong with the value of a key of this place. */
    public void problem(String key, String sentence) {
        Node child = children.get(key);
        problems.add(new Problem(file, child == null ? line : lineOf(child), sentence));
    }

    /** Says which keys may stand here; any other is a problem. */
    public YamlNode only(Set<String> allowed) {
        if (!(node instanceof MappingNode)) {
            problems.add(new Problem(file, line, "Keys with values are expected here."));
        }
        children.forEach((key, value) -> {
            if (!allowed.contains(key)) {
                problems.add(new Problem(file, lineOf(value), "The key \"" + key + "\" is not known here. Known are: "
                        + String.join(", ", allowed.stream().sorted().toList()) + "."));
            }
        });
        return this;
    }

    /** Whether a key is there. */
    public boolean has(String key) {
        return children.containsKey(key);
    }

    /** Whether the value of a key is a list. */
    public boolean isList(String key) {
        return children.get(key) instanceof SequenceNode;
    }

    /** The keys of this place, in order. */
    public List<String> keys() {
        return List.copyOf(children.keySet());
    }

    /** The text of a key, if it is there and is a single value. */
    public Optional<String> text(String key) {
        Node child = children.get(key);
        if (child == null) {
            return Optional.empty();
        }
        if (!(child instanceof ScalarNode scalar) || scalar.getTag().equals(Tag.NULL) || scalar.getValue().isBlank()) {
            problem(key, "\"" + key + "\" needs a single value.");
            return Optional.empty();
        }
        return Optional.of(scalar.getValue().strip());
    }

    /** The text of a key that must be there; a missing one is a problem and reads as empty text. */
    public String required(String key) {
        if (!children.containsKey(key)) {
            problems.add(new Problem(file, line, "\"" + key + "\" is missing."));
            return "";
        }
        return text(key).orElse("");
    }

    /** A value read from the text of a key; what the reader refuses becomes a problem at that line. */
    public <T> Optional<T> value(String key, Function<String, T> reader) {
        return text(key).flatMap(text -> {
            try {
                return Optional.of(reader.apply(text));
            } catch (IllegalArgumentException refused) {
                problem(key, refused.getMessage());
                return Optional.empty();
            }
        });
    }

    /** As {@link #value}, but a missing key is a problem. */
    public <T> Optional<T> requiredValue(String key, Function<String, T> reader) {
        if (!children.containsKey(key)) {
            problems.add(new Problem(file, line, "\"" + key + "\" is missing."));
            return Optional.empty();
        }
        return value(key, reader);
    }

    /** True or false; any other word, such as a bare no, is a problem. */
    public Optional<Boolean> flag(String key) {
        return value(key, text -> switch (text) {
            case "true" -> Boolean.TRUE;
            case "false" -> Boolean.FALSE;
            default -> throw new IllegalArgumentException("\"" + key + "\" is true or false, not \"" + text + "\".");
        });
    }

    /** The places of a list. */
    public List<YamlNode> list(String key) {
        Node child = children.get(key);
        if (child == null) {
            return List.of();
        }
        if (!(child instanceof SequenceNode sequence)) {
            problem(key, "\"" + key + "\" needs a list.");
            return List.of();
        }
        List<YamlNode> nodes = new ArrayList<>();
        sequence.getValue().forEach(item -> nodes.add(new YamlNode(file, item, lineOf(item), problems)));
        return nodes;
    }

    /** The texts of a list. */
    public List<String> texts(String key) {
        List<String> texts = new ArrayList<>();
        for (YamlNode item : list(key)) {
            if (item.node instanceof ScalarNode scalar) {
                texts.add(scalar.getValue().strip());
            } else {
                problems.add(new Problem(file, item.line, "A single value is expected in \"" + key + "\"."));
            }
        }
        return texts;
    }

    /** The place below a key. */
    public Optional<YamlNode> child(String key) {
        Node child = children.get(key);
        return child == null ? Optional.empty() : Optional.of(new YamlNode(file, child, lineOf(child), problems));
    }
}
