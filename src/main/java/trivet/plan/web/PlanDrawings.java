package trivet.plan.web;

import java.util.Comparator;
import java.util.stream.Collectors;
import trivet.flow.draw.FlowDrawing;
import trivet.knowledge.Knowledge;
import trivet.study.Study;
import trivet.study.Study.Control;

/** The drawings of a plan, on screen and on paper. */
public final class PlanDrawings {

    private PlanDrawings() {
    }

    /** The flow without links; empty text without steps. */
    public static String flow(Study study, Knowledge knowledge) {
        return study.steps().isEmpty() ? "" : flow(study, knowledge, false, "");
    }

    /** The rooms; empty text without any. */
    public static String rooms(Study study) {
        return RoomDrawing.svg(study);
    }

    static String flow(Study study, Knowledge knowledge, boolean links, String chosen) {
        return FlowDrawing.svg(study.flow(knowledge), study.title(), new FlowDrawing.Marks(input -> study.recipe().item(input).map(item -> item.title().isEmpty() ? item.id() : item.title()).orElse(input),
                step -> flag(study, step), step -> links ? "/owner/plans/" + study.product() + "/flow?step=" + step + "#chosen" : "", chosen));
    }

    private static String flag(Study study, String step) {
        return study.controls().stream().filter(control -> control.step().equals(step)).sorted(Comparator.comparing(Control::sort)).map(study::number).collect(Collectors.joining(", "));
    }
}
