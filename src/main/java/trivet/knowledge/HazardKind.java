package trivet.knowledge;

import trivet.form.As;
import trivet.form.Kind;

/**
 * A hazard as the knowledge base knows it.
 *
 * @param sort biological, chemical, physical or allergen
 * @param severity 1 to 4, a proposal
 * @param acceptable the acceptable level, a proposal, with its source
 */
public record HazardKind(@As(Kind.ID) String id, @As(value = Kind.CHOICE, of = {"biological", "chemical", "physical", "allergen"}) String sort, String title, @As(Kind.WHOLE) String severity, String acceptable,
        String acceptableSource, String source, @As(value = Kind.CHOICE, of = {"law", "guidance", "practice"}) String standing, @As(Kind.YES_NO) String read) implements Sourced {
}
