package trivet.plan.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import trivet.limit.Bound;
import trivet.limit.Problem;
import trivet.limit.file.YamlNode;
import trivet.measure.Quantity;
import trivet.plan.Plan;
import trivet.study.Study;
import trivet.study.file.StudyFile;

/** Reads one plan file, a hazard plan or one of the format {@code plan/1} before it, and reports everything that is wrong with it. */
public final class PlanReader {

    private static final Set<String> KEYS = Set.of("format", "product", "version", "title", "line", "description", "foods", "usual-bake",
            "bake-again-within", "reheat-within", "cool-check-every", "use-by", "storage-at-most", "steps", "control-points", "checks");
    private static final Set<String> LIMITS = Set.of("core-cook", "cooling", "chilled-storage", "frozen-storage", "hot-holding", "reheat");
    private static final Set<String> ACTIONS = Set.of("back-in-oven", "reheat", "hold", "probe-food", "move", "use-otherwise", "destroy", "adjust");

    private static final Set<String> OPERATING = Set.of("core-cook", "reheat", "chilled-storage", "frozen-storage", "hot-holding");

    private PlanReader() {
    }

    /** What was read. */
    public record Outcome(Optional<Plan> plan, List<Problem> problems) {
    }

    /** Reads the text of a file. */
    public static Outcome read(String file, String text) {
        List<Problem> problems = new ArrayList<>();
        YamlNode root = YamlNode.read(file, text, problems);
        if (!problems.isEmpty()) {
            return new Outcome(Optional.empty(), List.copyOf(problems));
        }
        if (root.text("format").map(Study.FORMAT::equals).orElse(false)) {
            return hazardPlan(file, text);
        }
        root.only(KEYS);
        if (!root.required("format").equals("plan/1")) {
            root.problem("format", "The format is plan/1.");
        }
        String line = root.required("line");
        if (!Set.of("wheat", "gluten-free").contains(line)) {
            root.problem("line", "The line is wheat or gluten-free.");
        }
        int version = root.requiredValue("version", Integer::valueOf).orElse(0);
        int bake = minutes(root, "usual-bake");
        int again = minutes(root, "bake-again-within");
        int reheat = root.has("reheat-within") ? minutes(root, "reheat-within") : 0;
        int every = minutes(root, "cool-check-every");
        int days = root.requiredValue("use-by", Quantity::days).orElse(0);
        Optional<Bound> storage = root.value("storage-at-most", number -> bound(false, number));
        Map<String, String> foods = new LinkedHashMap<>();
        root.child("foods").ifPresent(node -> node.keys().forEach(key -> node.text(key).ifPresent(food -> foods.put(key, food))));
        List<Plan.Step> steps = steps(root);
        List<Plan.ControlPoint> points = points(root, steps);
        List<Plan.CheckSpec> checks = checks(root, points);
        String product = root.required("product");
        String title = root.required("title");
        String description = root.required("description");
        if (!problems.isEmpty()) {
            return new Outcome(Optional.empty(), List.copyOf(problems));
        }
        return new Outcome(Optional.of(new Plan(product, version, title, line, description, foods, bake, again, reheat, every, days, storage, steps,
                points, checks, List.of(), List.of())), List.of());
    }

    private static Outcome hazardPlan(String file, String text) {
        StudyFile.Outcome read = StudyFile.read(file, text);
        if (read.study().isEmpty()) {
            return new Outcome(Optional.empty(), read.problems());
        }
        try {
            return new Outcome(Optional.of(Plan.of(read.study().get())), List.of());
        } catch (IllegalArgumentException lacking) {
            return new Outcome(Optional.empty(), List.of(new Problem(file, 1, lacking.getMessage())));
        }
    }

    private static int minutes(YamlNode root, String key) {
        return root.requiredValue(key, text -> Quantity.minutes(text).intValueExact()).orElse(0);
    }

    private static Bound bound(boolean minimum, String text) {
        return new Bound(minimum, true, Quantity.temperature(text), Quantity.fahrenheitBeside(text));
    }

    private static List<Plan.Step> steps(YamlNode root) {
        List<Plan.Step> steps = new ArrayList<>();
        for (YamlNode node : root.list("steps")) {
            node.only(Set.of("id", "title", "hazards"));
            steps.add(new Plan.Step(node.required("id"), node.required("title"), node.text("hazards").orElse("")));
        }
        if (steps.isEmpty()) {
            root.problem("steps", "A plan needs its steps.");
        }
        return steps;
    }

    private static List<Plan.ControlPoint> points(YamlNode root, List<Plan.Step> steps) {
        List<Plan.ControlPoint> points = new ArrayList<>();
        for (YamlNode node : root.list("control-points")) {
            node.only(Set.of("id", "step", "hazard", "limit", "operating", "on-breach"));
            String step = node.required("step");
            if (steps.stream().noneMatch(s -> s.id().equals(step))) {
                node.problem("step", "There is no step \"" + step + "\" in this plan.");
            }
            String limit = node.required("limit");
            if (!LIMITS.contains(limit)) {
                node.problem("limit", "No rulebook has a limit \"" + limit + "\". Known are: " + String.join(", ", LIMITS.stream().sorted().toList()) + ".");
            }
            List<String> actions = node.texts("on-breach");
            if (actions.isEmpty()) {
                node.problem("on-breach", "A control point says what to do on a breach.");
            }
            actions.stream().filter(action -> !ACTIONS.contains(action)).forEach(action -> node.problem("on-breach",
                    "\"" + action + "\" is not one of " + String.join(", ", ACTIONS.stream().sorted().toList()) + "."));
            if (node.has("operating") && !OPERATING.contains(limit)) {
                node.problem("operating", "An operating limit stands beside one of " + String.join(", ", OPERATING.stream().sorted().toList()) + ".");
            }
            Optional<Bound> operating = node.value("operating", number -> bound(!limit.endsWith("storage"), number));
            points.add(new Plan.ControlPoint(node.required("id"), step, node.required("hazard"), limit, operating, actions));
        }
        for (String needed : List.of("core-cook", "cooling", "chilled-storage")) {
            if (points.stream().noneMatch(point -> point.limit().equals(needed))) {
                root.problem("control-points", "No control point has the limit " + needed + ".");
            }
        }
        return points;
    }

    private static List<Plan.CheckSpec> checks(YamlNode root, List<Plan.ControlPoint> points) {
        List<Plan.CheckSpec> checks = new ArrayList<>();
        for (YamlNode node : root.list("checks")) {
            node.only(Set.of("id", "control-point", "what", "how", "often", "who", "probe"));
            String point = node.required("control-point");
            if (points.stream().noneMatch(p -> p.id().equals(point))) {
                node.problem("control-point", "There is no control point \"" + point + "\" in this plan.");
            }
            checks.add(new Plan.CheckSpec(node.required("id"), point, node.required("what"), node.required("how"), node.required("often"),
                    node.required("who"), node.text("probe").orElse("")));
        }
        return checks;
    }
}
