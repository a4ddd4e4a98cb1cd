package trivet.flow.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;
import trivet.flow.Flow;
import trivet.flow.FlowEdits;
import trivet.flow.Step;
import trivet.flow.Traits;

/** The drawing of a flow: no two boxes overlap, forty steps fit an A4 page legibly, and a small change moves little. */
class FlowDrawingTest {

    private static final FlowDrawing.Marks PLAIN = new FlowDrawing.Marks(id -> id, id -> id.equals("s20") ? "CCP 1" : "", id -> "");
    /** A4 less margins of 12 mm and a heading of 15 mm, in mm. */
    private static final double PAGE_WIDTH = 186;
    private static final double PAGE_HEIGHT = 258;

    /** Forty steps with five inputs' ways that join, a branch, waste and rework: what a bakery with two lines has. */
    static List<Step> forty() {
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            List<String> after = i < 5 ? List.of() : i == 5 ? List.of("s0", "s1", "s2") : i == 6 ? List.of("s3") : i == 7 ? List.of("s4") : i == 12 ? List.of("s11", "s6", "s7") : i == 30 ? List.of("s25") : i == 38 ? List.of("s29", "s37") : List.of("s" + (i - 1));
            steps.add(new Step("s" + i, "Step with a usual title " + i, i < 5 ? "receive" : "mix", "", "", after, i == 10 ? List.of("s14") : List.of(), i < 5 ? List.of("flour", "butter") : List.of(), List.of(), "15 min", "20 °C", ""));
        }
        return steps;
    }

    private static Flow flow(List<Step> steps) {
        return new Flow(steps, kind -> Traits.MIDDLE);
    }

    @Test
    void forty_steps_fit_an_a4_page_and_stay_legible() throws Exception {
        String svg = FlowDrawing.svg(flow(forty()), "Forty", PLAIN);
        var root = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg))).getDocumentElement();
        double width = Double.parseDouble(root.getAttribute("width"));
        double height = Double.parseDouble(root.getAttribute("height"));
        double scale = Math.min(PAGE_WIDTH / width, PAGE_HEIGHT / height);
        double titlePoints = 15 * scale / 25.4 * 72;
        assertTrue(titlePoints >= 6, "a title is " + titlePoints + " pt high on A4, of a drawing " + width + " × " + height);
    }

    @Test
    void no_box_lies_over_another() {
        List<double[]> boxes = new ArrayList<>(FlowDrawing.places(flow(forty()), PLAIN).values());
        assertEquals(40, boxes.size());
        for (int i = 0; i < boxes.size(); i++) {
            for (int k = i + 1; k < boxes.size(); k++) {
                double[] a = boxes.get(i);
                double[] b = boxes.get(k);
                assertTrue(a[0] + a[2] <= b[0] || b[0] + b[2] <= a[0] || a[1] + a[3] <= b[1] || b[1] + b[3] <= a[1], i + " and " + k);
            }
        }
    }

    @Test
    void a_step_more_keeps_the_order_of_the_others_and_the_same_flow_is_drawn_the_same() {
        List<Step> quiche = new ArrayList<>(List.of(Step.named("a", "Receive egg", "receive"), Step.named("b", "Receive flour", "receive"), Step.named("c", "Mix filling", "mix", "a"), Step.named("d", "Make pastry", "mix", "b"),
                Step.named("e", "Fill", "mix", "c", "d"), Step.named("f", "Bake", "mix", "e"), Step.named("g", "Cool", "mix", "f")));
        Map<String, double[]> before = FlowDrawing.places(flow(quiche), PLAIN);
        Map<String, double[]> again = FlowDrawing.places(flow(quiche), PLAIN);
        before.forEach((id, place) -> assertEquals(place[0] + " " + place[1], again.get(id)[0] + " " + again.get(id)[1]));
        Map<String, double[]> after = FlowDrawing.places(flow(FlowEdits.insertAfter(quiche, "f", Step.named("n", "Rest", "mix"))), PLAIN);
        for (String id : before.keySet()) {
            assertEquals(before.get(id)[0], after.get(id)[0], 1, "no step moves sideways: " + id);
            if (!id.equals("g")) {
                assertEquals(before.get(id)[1], after.get(id)[1], 1, "nothing above it moves: " + id);
            }
        }
        assertTrue(after.get("g")[1] > before.get("g")[1]);
        assertEquals(new HashMap<>(before).keySet().size() + 1, after.size());
    }

    @Test
    void whatever_the_order_of_the_list_only_rework_leads_upwards() {
        List<Step> steps = new ArrayList<>(List.of(Step.named("e", "Sell", "mix", "d"), Step.named("d", "Cool", "mix", "c"), Step.named("b", "Mix", "mix", "a").reworkFrom(List.of("c")), Step.named("c", "Bake", "mix", "b"), Step.named("a", "Receive", "receive")));
        for (int i = 0; i < 5; i++) {
            java.util.Collections.rotate(steps, 1);
            Map<String, double[]> places = FlowDrawing.places(flow(steps), PLAIN);
            for (Step step : steps) {
                step.after().forEach(before -> assertTrue(places.get(before)[1] < places.get(step.id())[1], before + " above " + step.id() + " in " + steps));
            }
        }
    }
}
