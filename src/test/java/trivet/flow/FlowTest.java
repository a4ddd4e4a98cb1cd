package trivet.flow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** The flow diagram: what is wrong is named, and no edit breaks it. */
class FlowTest {

    private static Traits traits(String kind) {
        return new Traits(kind.equals("receive"), kind.equals("sell") || kind.equals("waste"), kind.equals("bake"));
    }

    private static List<Step> quiche() {
        return new ArrayList<>(List.of(in(Step.named("receive", "Receive", "receive"), "egg", "cheese"), Step.named("mix", "Mix", "mix", "receive"), Step.named("bake", "Bake", "bake", "mix"),
                Step.named("cool", "Cool", "cool", "bake"), Step.named("sell", "Sell", "sell", "cool")));
    }

    private static Step in(Step step, String... inputs) {
        return new Step(step.id(), step.title(), step.kind(), step.room(), step.line(), step.after(), step.reworkFrom(), List.of(inputs), step.equipment(), step.time(), step.temperature(), step.note());
    }

    private static Set<String> sorts(List<Step> steps) {
        return new Flow(steps, FlowTest::traits).problems(List.of("egg", "cheese"), "egg"::equals).stream().map(p -> p.sort() + " " + p.at()).collect(Collectors.toSet());
    }

    @Test
    void a_good_flow_has_no_problem() {
        assertEquals(Set.of(), sorts(quiche()));
    }

    @Test
    void each_problem_is_named_where_it_is() {
        assertEquals(Set.of("empty "), sorts(List.of()));
        List<Step> steps = quiche();
        steps.add(Step.named("glaze", "Glaze", "glaze"));
        assertEquals(Set.of("unreachable glaze", "leads-nowhere glaze"), sorts(steps));
        assertEquals(Set.of("loop mix", "loop bake"), sorts(FlowEdits.join(quiche(), "bake", "mix")));
        assertEquals(Set.of(), sorts(FlowEdits.rework(quiche(), "bake", "mix")));
        assertEquals(Set.of("rework-forward bake"), sorts(FlowEdits.rework(quiche(), "mix", "bake")));
        assertTrue(sorts(FlowEdits.change(quiche(), Step.named("receive", "Receive", "receive"))).containsAll(Set.of("unused-input egg", "unused-input cheese")));
        assertEquals(Set.of("unknown-input cool"), sorts(FlowEdits.change(quiche(), in(Step.named("cool", "Cool", "cool", "bake"), "ham"))));
        assertEquals(Set.of("raw-meets-ready cool"), sorts(FlowEdits.change(quiche(), in(Step.named("cool", "Cool", "cool", "bake"), "egg"))));
        assertEquals(Set.of("unknown-step cool", "unreachable cool", "unreachable sell", "leads-nowhere bake"), sorts(FlowEdits.change(quiche(), Step.named("cool", "Cool", "cool", "bakery"))));
        steps = quiche();
        steps.add(Step.named("bake", "Bake again", "bake", "mix"));
        assertTrue(sorts(steps).contains("twice bake"));
    }

    @Test
    void a_raw_way_that_joins_baked_food_is_named_and_heating_after_it_is_enough() {
        List<Step> steps = FlowEdits.split(quiche(), "receive", Step.named("wash", "Wash eggs", "mix"));
        steps = FlowEdits.join(steps, "wash", "cool");
        assertEquals(Set.of("raw-meets-ready cool"), sorts(steps));
        List<Step> baked = FlowEdits.insertAfter(steps, "cool", Step.named("again", "Bake again", "bake"));
        assertEquals(Set.of(), sorts(baked));
    }

    @Test
    void the_wheat_line_never_leads_to_the_gluten_free_one() {
        Step wheat = new Step("mix", "Mix", "mix", "", "wheat", List.of("receive"), List.of(), List.of(), List.of(), "", "", "");
        Step free = new Step("bake", "Bake", "bake", "", "gluten-free", List.of("mix"), List.of(), List.of(), List.of(), "", "", "");
        assertEquals(Set.of("lines-cross bake"), sorts(FlowEdits.change(FlowEdits.change(quiche(), wheat), free)));
    }

    @Test
    void edits_do_what_they_say() {
        List<Step> steps = FlowEdits.insertAfter(quiche(), "mix", Step.named("fill", "Fill", "mix"));
        assertEquals(List.of("mix"), new Flow(steps, FlowTest::traits).step("fill").orElseThrow().after());
        assertEquals(List.of("fill"), new Flow(steps, FlowTest::traits).step("bake").orElseThrow().after());
        assertEquals(quiche(), FlowEdits.remove(steps, "fill"));
        List<Step> moved = FlowEdits.moveAfter(steps, "fill", "bake");
        assertEquals(List.of("mix"), new Flow(moved, FlowTest::traits).step("bake").orElseThrow().after());
        assertEquals(List.of("fill"), new Flow(moved, FlowTest::traits).step("cool").orElseThrow().after());
        assertEquals(Set.of(), sorts(moved));
        assertEquals(quiche(), FlowEdits.part(FlowEdits.join(quiche(), "mix", "sell"), "mix", "sell"));
    }

    /** Any sequence of edits leaves a flow whose ways all lead from steps that are there, and whose faults are named. */
    @Property(tries = 400)
    void any_edits_leave_a_flow_or_a_named_problem(@ForAll @Size(max = 30) List<@IntRange(min = 0, max = 6_999) Integer> edits) {
        List<Step> steps = quiche();
        int made = 0;
        for (int edit : edits) {
            String a = steps.isEmpty() ? "none" : steps.get(edit / 7 % steps.size()).id();
            String b = steps.isEmpty() ? "none" : steps.get(edit / 77 % steps.size()).id();
            steps = new ArrayList<>(switch (edit % 7) {
                case 0 -> FlowEdits.insertAfter(steps, a, Step.named("new-" + made++, "New", "mix"));
                case 1 -> FlowEdits.split(steps, a, Step.named("new-" + made++, "New", "waste"));
                case 2 -> FlowEdits.join(steps, a, b);
                case 3 -> FlowEdits.remove(steps, a);
                case 4 -> FlowEdits.moveAfter(steps, a, b);
                case 5 -> FlowEdits.rework(steps, a, b);
                default -> FlowEdits.part(steps, a, b);
            });
            Set<String> ids = steps.stream().map(Step::id).collect(Collectors.toSet());
            assertEquals(ids.size(), steps.size(), "ids stay unique");
            for (Step step : steps) {
                assertTrue(ids.containsAll(step.after()) && ids.containsAll(step.reworkFrom()), "no way leads from a step that is gone");
                assertEquals(new HashSet<>(step.after()).size(), step.after().size(), "no way twice");
            }
        }
        Flow flow = new Flow(steps, FlowTest::traits);
        Set<String> named = flow.problems(List.of(), x -> false).stream().map(FlowProblem::at).collect(Collectors.toSet());
        for (Step step : steps) {
            boolean reached = flow.upstream(step.id()).stream().anyMatch(before -> flow.step(before).orElseThrow().kind().equals("receive")) || step.kind().equals("receive") && step.after().isEmpty();
            boolean loops = flow.downstream(step.id()).contains(step.id());
            if (!reached || loops) {
                assertTrue(named.contains(step.id()), step + " is not reached from a beginning or loops, and nothing says so");
            }
        }
        assertEquals(steps.size(), new HashSet<>(flow.inOrder()).size());
    }
}
