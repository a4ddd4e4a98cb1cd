package trivet.knowledge;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import trivet.form.As;
import trivet.form.Kind;

/** The allergens that a label must name in one region, in its own groups. */
public record Region(@As(Kind.ID) String id, String title, String source, @As(value = Kind.CHOICE, of = {"law", "guidance", "practice"}) String standing, @As(Kind.YES_NO) String read, List<Group> groups) implements Sourced {

    /** A group of substances that the region names together. */
    public record Group(@As(Kind.ID) String id, String title, @As(Kind.NAME) List<String> of) {
    }

    /** The groups that some substances fall into, in the region's order. */
    public List<Group> groups(Set<String> substances) {
        Set<String> all = new TreeSet<>(substances);
        return groups.stream().filter(group -> group.of().stream().anyMatch(all::contains)).toList();
    }
}
