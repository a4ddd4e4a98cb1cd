package trivet.knowledge;

import java.util.List;
import trivet.form.As;
import trivet.form.Kind;

/**
 * An ingredient as the knowledge base knows it.
 *
 * @param contains the allergenic substances that the food itself is
 * @param flour whether it counts as flour, the base of baker's per cent
 * @param raw whether it must not meet food that is ready to eat
 */
public record Ingredient(@As(Kind.ID) String id, String title, @As(Kind.NAME) List<String> contains, @As(Kind.YES_NO) String flour, @As(Kind.YES_NO) String raw, @As(Kind.YES_NO) String animal,
        @As(Kind.NAME) List<String> hazards, String watch, String source, @As(value = Kind.CHOICE, of = {"law", "guidance", "practice"}) String standing, @As(Kind.YES_NO) String read) implements Sourced {

    /** Whether it is flour. */
    public boolean isFlour() {
        return flour.equals("true");
    }

    /** Whether it is raw. */
    public boolean isRaw() {
        return raw.equals("true");
    }

    /** Whether it is of animal origin. */
    public boolean isAnimal() {
        return animal.equals("true");
    }
}
