package trivet.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import trivet.flow.Flow;
import trivet.flow.Step;
import trivet.knowledge.Equipment;
import trivet.knowledge.HazardKind;
import trivet.knowledge.Ingredient;
import trivet.knowledge.Knowledge;
import trivet.knowledge.Sourced;
import trivet.knowledge.StepKind;
import trivet.words.Words;

/**
 * The hazards that the knowledge base proposes for each step, from what comes in, the kind of step, its equipment and the product's
 * properties. A proposal decides nothing: a person accepts it, or rejects it with a reason.
 */
public final class Proposals {

    private static final double TOO_SOUR = 4.4;
    private static final double TOO_DRY = 0.92;
    private static final Set<String> SPORES = Set.of("perfringens", "cereus", "botulinum");

    private final Study study;
    private final Knowledge knowledge;
    private final Flow flow;
    private final Map<String, List<Ingredient>> comeIn = new HashMap<>();

    /** Proposals for a plan. */
    public Proposals(Study study, Knowledge knowledge) {
        this.study = study;
        this.knowledge = knowledge;
        this.flow = study.flow(knowledge);
    }

    /**
     * A hazard proposed at a step.
     *
     * @param whys each reason, as a sentence
     * @param sources the source of each reason, with its standing
     */
    public record Proposal(String step, HazardKind hazard, List<String> whys, List<String> sources, String control) {
    }

    /** Those proposed and neither accepted nor rejected yet, in the order of the steps. */
    public List<Proposal> waiting() {
        return all().stream().filter(proposal -> study.hazards().stream().noneMatch(hazard -> hazard.step().equals(proposal.step()) && hazard.kind().equals(proposal.hazard().id()))).toList();
    }

    /** All that are proposed, in the order of the steps. */
    public List<Proposal> all() {
        List<Proposal> all = new ArrayList<>();
        flow.steps().forEach(step -> all.addAll(at(step)));
        return all;
    }

    /** Those proposed at a step. */
    public List<Proposal> at(Step step) {
        List<Proposal> found = new ArrayList<>();
        for (String input : step.inputs()) {
            study.recipe().item(input).flatMap(item -> knowledge.ingredient(item.kind())).ifPresent(kind -> kind.hazards().forEach(hazard ->
                    propose(found, step, hazard, Words.say("j_proposed_by_ingredient", title(input), knowledge.hazard(hazard).map(HazardKind::title).orElse(hazard)), kind, kind.watch())));
        }
        knowledge.step(step.kind()).ifPresent(kind -> kind.hazards().stream().filter(at -> holds(step, at)).forEach(at -> propose(found, step, at.hazard(), at.why() + ".", kind, at.control())));
        for (String tool : step.equipment()) {
            Optional<Equipment> known = knowledge.equipment(tool);
            known.ifPresent(kind -> kind.hazards().stream().filter(this::bearing).forEach(hazard -> propose(found, step, hazard, Words.say("j_proposed_by_equipment", kind.title(), kind.why()), kind, "")));
        }
        return found;
    }

    private String title(String input) {
        return study.recipe().item(input).map(item -> item.title().isEmpty() ? item.id() : item.title()).orElse(input);
    }

    /** Gluten is a hazard only where the product claims to be free of it, and allergens only where others are handled beside. */
    private boolean bearing(String hazard) {
        return !hazard.equals("gluten-contact") || study.description().glutenFree() || study.line().equals("gluten-free");
    }

    private void propose(List<Proposal> found, Step step, String hazard, String why, Sourced row, String control) {
        Optional<HazardKind> kind = knowledge.hazard(hazard);
        if (kind.isEmpty() || !bearing(hazard)) {
            return;
        }
        String source = Words.say("j_source_with_standing", row.source(), Words.named("standing", row.standing()));
        for (int i = 0; i < found.size(); i++) {
            Proposal before = found.get(i);
            if (before.hazard().id().equals(hazard)) {
                found.set(i, new Proposal(step.id(), kind.get(), with(before.whys(), why), with(before.sources(), source), before.control().isEmpty() ? control : before.control()));
                return;
            }
        }
        found.add(new Proposal(step.id(), kind.get(), List.of(why), List.of(source), control));
    }

    private static List<String> with(List<String> before, String more) {
        Set<String> all = new LinkedHashSet<>(before);
        all.add(more);
        return List.copyOf(all);
    }

    private boolean holds(Step step, StepKind.AtStep at) {
        return at.when().stream().allMatch(condition -> holds(step, condition));
    }

    private boolean holds(Step step, String condition) {
        List<Ingredient> in = comeIn(step);
        return switch (condition) {
            case "animal" -> in.stream().anyMatch(Ingredient::isAnimal);
            case "raw" -> in.stream().anyMatch(Ingredient::isRaw);
            case "spores" -> in.stream().anyMatch(kind -> kind.hazards().stream().anyMatch(SPORES::contains));
            case "flour" -> in.stream().anyMatch(Ingredient::isFlour);
            case "wheat" -> in.stream().anyMatch(kind -> kind.contains().contains("wheat"));
            case "pork" -> in.stream().anyMatch(kind -> kind.hazards().contains("yersinia-parasites"));
            case "poultry" -> in.stream().anyMatch(kind -> kind.hazards().contains("campylobacter"));
            case "ready" -> flow.ready(step.id());
            case "perishable" -> perishable();
            case "gluten-free" -> study.description().glutenFree() || study.line().equals("gluten-free");
            case "allergens" -> !study.recipe().contains(knowledge).isEmpty();
            default -> false;
        };
    }

    /** Whether growth is possible: not known to be too sour or too dry (Reg. (EC) 2073/2005 Annex I note 8, from memory: pH 4.4, water activity 0.92). */
    public boolean perishable() {
        return !(study.description().acidity().map(ph -> ph <= TOO_SOUR).orElse(false) || study.description().activity().map(aw -> aw <= TOO_DRY).orElse(false));
    }

    /** What has come in up to a step, that step included. */
    private List<Ingredient> comeIn(Step step) {
        return comeIn.computeIfAbsent(step.id(), id -> kinds(step));
    }

    private List<Ingredient> kinds(Step step) {
        Set<String> inputs = new LinkedHashSet<>(step.inputs());
        flow.upstream(step.id()).forEach(before -> flow.step(before).ifPresent(s -> inputs.addAll(s.inputs())));
        return inputs.stream().flatMap(input -> study.recipe().item(input).flatMap(item -> knowledge.ingredient(item.kind())).stream()).toList();
    }
}
