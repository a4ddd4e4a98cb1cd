package trivet.knowledge;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import trivet.flow.Traits;

/** The knowledge base as a whole. */
public final class Knowledge {

    private final Map<String, HazardKind> hazards;
    private final Map<String, Ingredient> ingredients;
    private final Map<String, StepKind> steps;
    private final Map<String, Equipment> equipment;
    private final Map<String, Substance> substances;
    private final Map<String, Region> regions;
    private final Map<String, ProgrammeTopic> programmes;

    /** A knowledge base of its rows. */
    public Knowledge(List<HazardKind> hazards, List<Ingredient> ingredients, List<StepKind> steps, List<Equipment> equipment, List<Substance> substances, List<Region> regions, List<ProgrammeTopic> programmes) {
        this.hazards = byId(hazards, HazardKind::id);
        this.ingredients = byId(ingredients, Ingredient::id);
        this.steps = byId(steps, StepKind::id);
        this.equipment = byId(equipment, Equipment::id);
        this.substances = byId(substances, Substance::id);
        this.regions = byId(regions, Region::id);
        this.programmes = byId(programmes, ProgrammeTopic::id);
    }

    private static <T> Map<String, T> byId(List<T> rows, Function<T, String> id) {
        return rows.stream().collect(Collectors.toMap(id, Function.identity(), (a, b) -> a, LinkedHashMap::new));
    }

    /** Every hazard. */
    public List<HazardKind> hazards() {
        return List.copyOf(hazards.values());
    }

    /** A hazard. */
    public Optional<HazardKind> hazard(String id) {
        return Optional.ofNullable(hazards.get(id));
    }

    /** Every ingredient. */
    public List<Ingredient> ingredients() {
        return List.copyOf(ingredients.values());
    }

    /** An ingredient. */
    public Optional<Ingredient> ingredient(String id) {
        return Optional.ofNullable(ingredients.get(id));
    }

    /** Every kind of step. */
    public List<StepKind> steps() {
        return List.copyOf(steps.values());
    }

    /** A kind of step. */
    public Optional<StepKind> step(String id) {
        return Optional.ofNullable(steps.get(id));
    }

    /** What a kind of step means for a flow. */
    public Traits traits(String kind) {
        return step(kind).map(StepKind::traits).orElse(Traits.MIDDLE);
    }

    /** Every piece of equipment. */
    public List<Equipment> equipment() {
        return List.copyOf(equipment.values());
    }

    /** A piece of equipment. */
    public Optional<Equipment> equipment(String id) {
        return Optional.ofNullable(equipment.get(id));
    }

    /** Every allergenic substance. */
    public List<Substance> substances() {
        return List.copyOf(substances.values());
    }

    /** The title of a substance, or its bare id. */
    public String substance(String id) {
        return Optional.ofNullable(substances.get(id)).map(Substance::title).orElse(id);
    }

    /** Those of some substances that bring gluten. */
    public Set<String> gluten(Set<String> all) {
        return all.stream().filter(id -> substances.containsKey(id) && substances.get(id).gluten().equals("true")).collect(Collectors.toCollection(TreeSet::new));
    }

    /** Every region's list of allergens. */
    public List<Region> regions() {
        return List.copyOf(regions.values());
    }

    /** A region's list. */
    public Optional<Region> region(String id) {
        return Optional.ofNullable(regions.get(id));
    }

    /** Every topic of prerequisite programmes. */
    public List<ProgrammeTopic> programmes() {
        return List.copyOf(programmes.values());
    }
}
