package trivet.flow;

import java.util.ArrayList;
import java.util.List;
import trivet.form.As;
import trivet.form.Kind;

/**
 * One step of the making of a product.
 *
 * @param kind the kind of step in the knowledge base, such as {@code bake}
 * @param room where it is done
 * @param line empty when both lines share it
 * @param after the steps whose product comes here
 * @param reworkFrom steps whose leftover comes back here, marked so that the loop is meant
 * @param inputs the ingredients of the recipe that come in here
 * @param time how long it takes, in words; an interval is fine
 * @param temperature of the food or of the place, in words
 */
public record Step(@As(Kind.ID) String id, String title, @As(Kind.NAME) String kind, @As(Kind.NAME) String room, @As(value = Kind.CHOICE, of = {"wheat", "gluten-free"}) String line,
        @As(Kind.NAME) List<String> after, @As(Kind.NAME) List<String> reworkFrom, @As(Kind.NAME) List<String> inputs, List<String> equipment, String time, String temperature, @As(Kind.TEXT) String note) {

    /** Copies the lists. */
    public Step {
        after = List.copyOf(after);
        reworkFrom = List.copyOf(reworkFrom);
        inputs = List.copyOf(inputs);
        equipment = List.copyOf(equipment);
    }

    /** A step with nothing but its name. */
    public static Step named(String id, String title, String kind, String... after) {
        return new Step(id, title, kind, "", "", List.of(after), List.of(), List.of(), List.of(), "", "", "");
    }

    /** The same step after others. */
    public Step after(List<String> others) {
        return new Step(id, title, kind, room, line, List.copyOf(new java.util.LinkedHashSet<>(others)), reworkFrom, inputs, equipment, time, temperature, note);
    }

    /** The same step with rework from others. */
    public Step reworkFrom(List<String> others) {
        return new Step(id, title, kind, room, line, after, List.copyOf(new java.util.LinkedHashSet<>(others)), inputs, equipment, time, temperature, note);
    }

    /** The same step, with one name put in place of another, or taken away when that is empty, wherever it leads from. */
    Step renaming(String from, List<String> to) {
        return after(put(after, from, to)).reworkFrom(put(reworkFrom, from, to.size() == 1 ? to : List.of()));
    }

    private static List<String> put(List<String> names, String from, List<String> to) {
        List<String> all = new ArrayList<>();
        names.forEach(name -> all.addAll(name.equals(from) ? to : List.of(name)));
        return all;
    }
}
