package trivet.knowledge;

import java.util.List;
import trivet.flow.Traits;
import trivet.form.As;
import trivet.form.Kind;

/** A kind of step as the knowledge base knows it, with what can go wrong there. */
public record StepKind(@As(Kind.ID) String id, String title, @As(Kind.YES_NO) String begins, @As(Kind.YES_NO) String ends, @As(Kind.YES_NO) String makesSafe, String source,
        @As(value = Kind.CHOICE, of = {"law", "guidance", "practice"}) String standing, @As(Kind.YES_NO) String read, List<AtStep> hazards) implements Sourced {

    /**
     * A hazard at a kind of step.
     *
     * @param when what must hold for it to be proposed; empty for always
     * @param why why it is proposed
     * @param control what usually controls it, a proposal
     */
    public record AtStep(@As(Kind.NAME) String hazard,
            @As(value = Kind.CHOICE, of = {"animal", "raw", "spores", "flour", "wheat", "ready", "perishable", "gluten-free", "allergens", "pork", "poultry"}) List<String> when, String why, String control) {
    }

    /** What the kind means for a flow. */
    public Traits traits() {
        return new Traits(begins.equals("true"), ends.equals("true"), makesSafe.equals("true"));
    }
}
