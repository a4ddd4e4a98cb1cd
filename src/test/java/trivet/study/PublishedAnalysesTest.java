package trivet.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import trivet.flow.Step;
import trivet.form.Parts;
import trivet.study.Study.Answer;
import trivet.study.Study.Hazard;

/**
 * Two published hazard analyses of food that is cooked and cooled, step by step against what the knowledge base proposes and where the tree of 2022
 * leads with their reasoning. The order of the steps of FDA's process 3 and its controls (cooking, cooling, hot and cold holding, reheating) were read as
 * others quote them; the rest is from memory: FSIS, HACCP Model for Fully Cooked-Not Shelf Stable Roast Beef (FSIS-GD-2022-0002: cooking
 * and chilling are its CCPs), and FDA, Managing Food Safety: A Manual for the Voluntary Use of HACCP Principles for Operators (April 2006), process
 * 3, complex food preparation: cooking, cooling, reheating and hot holding. Differences stand in the table with their explanation.
 */
class PublishedAnalysesTest {

    private static final Map<String, List<String>> STEPS = Map.of("roast-beef", List.of("receive", "store-chilled", "bake", "cool", "slice", "pack", "store-ready", "sell"),
            "complex-food", List.of("receive", "store-chilled", "bake", "cool", "store-ready", "reheat", "hot-hold", "sell"));
    /** Steps after which the same hazard is controlled once more, by the process as published. */
    private static final Set<String> CONTROLLED_LATER = Set.of("receive", "store-chilled");
    private static final Set<String> BY_PROGRAMME = Set.of("slice", "pack", "sell");

    private static Study study(String analysis) {
        List<Step> steps = new ArrayList<>();
        String before = null;
        for (String kind : STEPS.get(analysis)) {
            steps.add(new Step(kind, kind, kind, "", "", before == null ? List.of() : List.of(before), List.of(), kind.equals("receive") ? List.of("beef") : List.of(), List.of(), "", "", ""));
            before = kind;
        }
        Recipe.Item beef = new Recipe.Item("beef", "beef-raw", "Beef", "", "1000", "", "", "", List.of(), List.of());
        return Study.named(analysis, analysis, "wheat").with("steps", steps).with("recipe", new Recipe("1", "", "", List.of(beef)));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/study/published-analyses.csv", numLinesToSkip = 1)
    void step_by_step(String analysis, String step, String hazard, String published, String ours, String difference) {
        Study study = study(analysis);
        assertTrue(study.flow(Examples.KNOWLEDGE).problems(List.of("beef"), x -> true).isEmpty());
        Set<String> proposed = new Proposals(study, Examples.KNOWLEDGE).all().stream().filter(p -> p.step().equals(step)).map(p -> p.hazard().id()).collect(Collectors.toSet());
        assertTrue(proposed.contains(hazard), hazard + " is not proposed at " + step + ": " + proposed);
        assertEquals(published.equals(ours), difference == null || difference.isBlank(), "a difference is explained, and only a difference");
        assertEquals(ours, routed(study, step, hazard));
    }

    private static String routed(Study study, String step, String kind) {
        boolean programme = BY_PROGRAMME.contains(step);
        List<Answer> answers = new ArrayList<>(List.of(new Answer("codex-2022-q1", programme ? "yes" : "no", "as published")));
        if (!programme) {
            answers.add(new Answer("codex-2022-q2", "yes", "as published"));
            answers.add(new Answer("codex-2022-q3", CONTROLLED_LATER.contains(step) ? "yes" : "no", "as published"));
            answers.addAll(CONTROLLED_LATER.contains(step) ? List.of() : List.of(new Answer("codex-2022-q4", "yes", "as published")));
        }
        Hazard hazard = Parts.with(Parts.with(Parts.with(Parts.with(Parts.empty(Hazard.class), "likelihood", "2"), "severity", Examples.KNOWLEDGE.hazard(kind).orElseThrow().severity()), "decision", "accepted"), "answers", answers);
        return switch (Decision.of(study.method(), hazard).needs(hazard)) {
            case CCP -> "ccp";
            case LATER -> "later-step";
            case PROGRAMME -> "programme";
            default -> "other";
        };
    }
}
