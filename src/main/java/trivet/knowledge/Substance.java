package trivet.knowledge;

import trivet.form.As;
import trivet.form.Kind;

/** An allergenic substance; {@code gluten} says whether it brings gluten. */
public record Substance(@As(Kind.ID) String id, String title, @As(Kind.YES_NO) String gluten) {
}
