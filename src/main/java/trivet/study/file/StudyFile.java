package trivet.study.file;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import trivet.form.file.PartsFile;
import trivet.limit.Problem;
import trivet.limit.file.YamlNode;
import trivet.study.Study;

/** Reads and writes one hazard plan, format {@code plan/2}; what was written reads and writes to the same bytes. */
public final class StudyFile {

    private StudyFile() {
    }

    /** What was read. */
    public record Outcome(Optional<Study> study, List<Problem> problems) {
    }

    /** Reads a draft: what cannot be understood is a problem; what is missing is an open point of the plan, not a problem of the file. */
    public static Outcome read(String file, String text) {
        return read(file, text, false);
    }

    /** Reads a file that comes from elsewhere: names that lead nowhere and ids that stand twice are problems too, each with its line. */
    public static Outcome strict(String file, String text) {
        return read(file, text, true);
    }

    private static Outcome read(String file, String text, boolean strict) {
        List<Problem> problems = new ArrayList<>();
        YamlNode root = YamlNode.read(file, text, problems);
        if (!problems.isEmpty()) {
            return new Outcome(Optional.empty(), List.copyOf(problems));
        }
        if (!root.required("format").equals(Study.FORMAT)) {
            root.problem("format", "The format is " + Study.FORMAT + ".");
        }
        root.required("product");
        Study study = PartsFile.read(Study.class, root);
        if (strict) {
            names(root);
        }
        return problems.isEmpty() ? new Outcome(Optional.of(study), List.of()) : new Outcome(Optional.empty(), List.copyOf(problems));
    }

    private static Set<String> ids(List<YamlNode> nodes) {
        Set<String> seen = new HashSet<>();
        for (YamlNode node : nodes) {
            String id = node.required("id");
            if (!seen.add(id)) {
                node.problem("id", "\"" + id + "\" stands here twice.");
            }
        }
        return seen;
    }

    private static void names(YamlNode root) {
        Set<String> items = root.child("recipe").map(recipe -> ids(recipe.list("items"))).orElse(Set.of());
        Set<String> rooms = ids(root.list("rooms"));
        Set<String> steps = ids(root.list("steps"));
        Set<String> controls = ids(root.list("controls"));
        Set<String> evidence = ids(root.list("evidence"));
        Set<String> programmes = ids(root.list("programmes"));
        ids(root.list("hazards"));
        root.list("steps").forEach(node -> {
            lead(node, "after", steps);
            lead(node, "rework-from", steps);
            lead(node, "inputs", items);
            lead(node, "room", rooms);
        });
        root.list("ways").forEach(node -> {
            lead(node, "from", rooms);
            lead(node, "to", rooms);
        });
        root.list("hazards").forEach(node -> {
            lead(node, "step", steps);
            lead(node, "later-step", steps);
            lead(node, "controls", controls);
            lead(node, "programmes", programmes);
        });
        root.list("controls").forEach(node -> {
            lead(node, "step", steps);
            lead(node, "evidence", evidence);
        });
        root.child("description").ifPresent(node -> {
            lead(node, "life-evidence", evidence);
            lead(node, "claim-evidence", evidence);
        });
    }

    private static void lead(YamlNode node, String key, Set<String> known) {
        List<String> names = node.isList(key) ? node.texts(key) : node.text(key).stream().toList();
        names.stream().filter(name -> !known.contains(name)).forEach(name -> node.problem(key, "\"" + name + "\" is not in this plan. Known here are: "
                + known.stream().sorted().collect(Collectors.joining(", ")) + "."));
    }

    /** The text of a plan. */
    public static String write(Study study) {
        return PartsFile.write(study);
    }
}
