package trivet.knowledge.file;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import trivet.form.file.PartsFile;
import trivet.knowledge.Equipment;
import trivet.knowledge.HazardKind;
import trivet.knowledge.Ingredient;
import trivet.knowledge.Knowledge;
import trivet.knowledge.ProgrammeTopic;
import trivet.knowledge.Region;
import trivet.knowledge.Sourced;
import trivet.knowledge.StepKind;
import trivet.knowledge.Substance;
import trivet.limit.Problem;
import trivet.limit.file.YamlNode;

/** Reads the files under plans/knowledge, packaged with the service, and reports every problem with file and line. */
public final class KnowledgeReader {

    /** The files. */
    public static final List<String> FILES = List.of("allergens", "hazards", "ingredients", "steps", "equipment", "programmes");

    private final List<Problem> problems = new ArrayList<>();
    private final Function<String, String> text;

    private KnowledgeReader(Function<String, String> text) {
        this.text = text;
    }

    /** What was read. */
    public record Outcome(Knowledge knowledge, List<Problem> problems) {
    }

    /** The one knowledge base of the service. */
    @ApplicationScoped
    static class Shipped {
        @Produces
        @ApplicationScoped
        Holder holder() {
            return new Holder(shipped());
        }
    }

    /** Holds the knowledge base, as a bean needs a class that can be wrapped. */
    public static class Holder {
        private final Knowledge knowledge;

        Holder() {
            this(null);
        }

        Holder(Knowledge knowledge) {
            this.knowledge = knowledge;
        }

        /** The knowledge base. */
        public Knowledge get() {
            return knowledge;
        }
    }

    /** The shipped knowledge base; refuses to start with a broken one. */
    public static Knowledge shipped() {
        Outcome outcome = read(KnowledgeReader::resource);
        if (!outcome.problems().isEmpty()) {
            throw new IllegalStateException(outcome.problems().stream().map(Problem::toString).collect(Collectors.joining("\n")));
        }
        return outcome.knowledge();
    }

    /** Reads the text of each file. */
    public static Outcome read(Function<String, String> text) {
        return new KnowledgeReader(text).read();
    }

    private Outcome read() {
        YamlNode allergens = root("allergens", Set.of("format", "substances", "regions"));
        List<Substance> substances = rows(allergens, "substances", Substance.class);
        List<Region> regions = rows(allergens, "regions", Region.class);
        List<HazardKind> hazards = rows(root("hazards", Set.of("format", "hazards")), "hazards", HazardKind.class);
        YamlNode ingredientsFile = root("ingredients", Set.of("format", "ingredients"));
        List<Ingredient> ingredients = rows(ingredientsFile, "ingredients", Ingredient.class);
        YamlNode stepsFile = root("steps", Set.of("format", "steps"));
        List<StepKind> steps = rows(stepsFile, "steps", StepKind.class);
        YamlNode equipmentFile = root("equipment", Set.of("format", "equipment"));
        List<Equipment> equipment = rows(equipmentFile, "equipment", Equipment.class);
        List<ProgrammeTopic> programmes = rows(root("programmes", Set.of("format", "programmes")), "programmes", ProgrammeTopic.class);
        Set<String> known = hazards.stream().map(HazardKind::id).collect(Collectors.toSet());
        Set<String> names = substances.stream().map(Substance::id).collect(Collectors.toSet());
        ingredients.forEach(row -> {
            row.hazards().forEach(id -> named(ingredientsFile, "ingredients", known, id, row.id()));
            row.contains().forEach(id -> named(ingredientsFile, "ingredients", names, id, row.id()));
        });
        steps.forEach(row -> row.hazards().forEach(at -> named(stepsFile, "steps", known, at.hazard(), row.id())));
        equipment.forEach(row -> row.hazards().forEach(id -> named(equipmentFile, "equipment", known, id, row.id())));
        regions.forEach(row -> row.groups().forEach(group -> group.of().forEach(id -> named(allergens, "regions", names, id, row.id()))));
        return new Outcome(new Knowledge(hazards, ingredients, steps, equipment, substances, regions, programmes), List.copyOf(problems));
    }

    private static void named(YamlNode file, String key, Set<String> known, String id, String row) {
        if (!known.contains(id)) {
            file.problem(key, "\"" + row + "\" names \"" + id + "\", which is not there.");
        }
    }

    private YamlNode root(String file, Set<String> keys) {
        YamlNode root = YamlNode.read("plans/knowledge/" + file + ".yaml", text.apply(file), problems);
        root.only(keys);
        if (!root.required("format").equals(file + "/1")) {
            root.problem("format", "The format is " + file + "/1.");
        }
        return root;
    }

    private static <T extends Record> List<T> rows(YamlNode root, String key, Class<T> type) {
        List<T> rows = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (YamlNode node : root.list(key)) {
            T row = PartsFile.read(type, node);
            rows.add(row);
            if (!ids.add(node.required("id"))) {
                node.problem("id", "\"" + node.required("id") + "\" stands here twice.");
            }
            if (row instanceof Sourced) {
                for (String needed : List.of("title", "source", "standing", "read")) {
                    node.required(needed);
                }
            }
        }
        return rows;
    }

    private static String resource(String file) {
        try (InputStream in = KnowledgeReader.class.getClassLoader().getResourceAsStream("plans/knowledge/" + file + ".yaml")) {
            if (in == null) {
                throw new IllegalStateException("plans/knowledge/" + file + ".yaml is not packaged with the service.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /** The texts of the shipped files, by name. */
    public static Map<String, String> texts() {
        return FILES.stream().collect(Collectors.toMap(file -> file, KnowledgeReader::resource));
    }
}
