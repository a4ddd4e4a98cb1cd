package trivet.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import trivet.flow.FlowEdits;
import trivet.flow.Step;
import trivet.form.Parts;

/** What differs between two versions, in words. */
class DifferencesTest {

    private static final Study QUICHE = Examples.study("deep-quiche");

    private static List<String> between(Study after) {
        return Differences.between(QUICHE, after).stream().map(difference -> difference.part() + ": " + difference.words()).toList();
    }

    @Test
    void a_changed_number_says_from_what_to_what() {
        assertEquals(List.of("controls: Core of the bake, Operating limit, stricter than the critical one: 76 °C → 78 °C"), between(Examples.changingControl(QUICHE, "cook", "operating", "78 °C")));
        assertEquals(List.of("description: Days of life: 3 days → 4 days"), between(QUICHE.with("description", Parts.with(QUICHE.description(), "use-by", "4 days"))));
    }

    @Test
    void items_that_are_new_or_gone_are_named_and_nothing_else() {
        List<String> flow = between(QUICHE.with("steps", FlowEdits.insertAfter(QUICHE.steps(), "bake", Step.named("let-rest", "Let rest", "other"))));
        assertTrue(flow.contains("steps: Let rest: new") && flow.size() == 2, flow.toString());
        assertEquals(List.of("recipe: Salt: taken out"), between(QUICHE.with("recipe", Parts.with(QUICHE.recipe(), "items", QUICHE.recipe().items().stream().filter(item -> !item.id().equals("salt")).toList()))));
        assertEquals(List.of(), between(QUICHE.with("version", "2")));
    }
}
