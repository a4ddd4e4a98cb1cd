package trivet.knowledge;

import java.util.List;
import trivet.form.As;
import trivet.form.Kind;

/** A piece of equipment and what it can bring in. */
public record Equipment(@As(Kind.ID) String id, String title, @As(Kind.NAME) List<String> hazards, String why, String source, @As(value = Kind.CHOICE, of = {"law", "guidance", "practice"}) String standing,
        @As(Kind.YES_NO) String read) implements Sourced {
}
