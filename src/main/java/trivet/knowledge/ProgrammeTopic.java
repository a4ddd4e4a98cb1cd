package trivet.knowledge;

import trivet.form.As;
import trivet.form.Kind;

/** A topic of prerequisite programmes, with a proposal of what to do, how often, and what shows that it was done. */
public record ProgrammeTopic(@As(Kind.ID) String id, String title, String what, @As(value = Kind.CHOICE, of = {"batch", "daily", "weekly", "monthly", "yearly"}) String often, String evidence, @As(Kind.YES_NO) String greaterAttention, String source,
        @As(value = Kind.CHOICE, of = {"law", "guidance", "practice"}) String standing, @As(Kind.YES_NO) String read) implements Sourced {
}
