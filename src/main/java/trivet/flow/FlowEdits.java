package trivet.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * The ways to change a flow, each of which needs a tap and no dragging: a step after another, two ways that join, a way that splits,
 * a step moved or taken out. Each gives a new list; a step that is not there changes nothing.
 */
public final class FlowEdits {

    private FlowEdits() {
    }

    private static int index(List<Step> steps, String id) {
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).id().equals(id)) {
                return i;
            }
        }
        return -1;
    }

    private static List<Step> each(List<Step> steps, UnaryOperator<Step> change) {
        return new ArrayList<>(steps.stream().map(change).toList());
    }

    /** A new step that begins a way of its own. */
    public static List<Step> begin(List<Step> steps, Step added) {
        List<Step> all = new ArrayList<>(steps);
        if (index(steps, added.id()) < 0) {
            all.add(added.after(List.of()));
        }
        return all;
    }

    /** A new step after another, on its way: what came after that one comes after the new one. */
    public static List<Step> insertAfter(List<Step> steps, String id, Step added) {
        int at = index(steps, id);
        if (at < 0 || index(steps, added.id()) >= 0) {
            return List.copyOf(steps);
        }
        List<Step> all = each(steps, step -> step.after().contains(id) ? step.after(step.after().stream().map(before -> before.equals(id) ? added.id() : before).toList()) : step);
        all.add(at + 1, added.after(List.of(id)));
        return all;
    }

    /** A new step after another, on a way of its own beside what already comes after it. */
    public static List<Step> split(List<Step> steps, String id, Step added) {
        int at = index(steps, id);
        if (at < 0 || index(steps, added.id()) >= 0) {
            return List.copyOf(steps);
        }
        List<Step> all = new ArrayList<>(steps);
        all.add(at + 1, added.after(List.of(id)));
        return all;
    }

    /** What leaves one step also comes to another. */
    public static List<Step> join(List<Step> steps, String from, String to) {
        if (index(steps, from) < 0 || from.equals(to)) {
            return List.copyOf(steps);
        }
        return each(steps, step -> step.id().equals(to) && !step.after().contains(from) ? step.after(added(step.after(), from)) : step);
    }

    /** What leaves one step no longer comes to another. */
    public static List<Step> part(List<Step> steps, String from, String to) {
        return each(steps, step -> step.id().equals(to) ? step.after(step.after().stream().filter(before -> !before.equals(from)).toList())
                .reworkFrom(step.reworkFrom().stream().filter(before -> !before.equals(from)).toList()) : step);
    }

    /** Leftover of one step comes back to another, marked as rework. */
    public static List<Step> rework(List<Step> steps, String from, String to) {
        if (index(steps, from) < 0) {
            return List.copyOf(steps);
        }
        return each(steps, step -> step.id().equals(to) && !step.reworkFrom().contains(from) ? step.reworkFrom(added(step.reworkFrom(), from)) : step);
    }

    /** A step taken out: what led to it leads to what came after it. */
    public static List<Step> remove(List<Step> steps, String id) {
        int at = index(steps, id);
        if (at < 0) {
            return List.copyOf(steps);
        }
        List<String> before = steps.get(at).after();
        List<Step> all = new ArrayList<>();
        for (Step step : steps) {
            if (!step.id().equals(id)) {
                Step kept = step.renaming(id, before.stream().filter(one -> !one.equals(step.id())).toList());
                all.add(kept.reworkFrom(step.reworkFrom().stream().filter(one -> !one.equals(id)).toList()));
            }
        }
        return all;
    }

    /** A step moved to come after another, on that one's way; refused, by changing nothing, for itself. */
    public static List<Step> moveAfter(List<Step> steps, String id, String target) {
        int at = index(steps, id);
        if (at < 0 || index(steps, target) < 0 || id.equals(target)) {
            return List.copyOf(steps);
        }
        Step moved = steps.get(at);
        List<Step> without = remove(steps, id);
        return insertAfter(without, target, moved);
    }

    /** A step moved one place up or down in the list, which is for reading and drawing only. */
    public static List<Step> shift(List<Step> steps, String id, boolean up) {
        int at = index(steps, id);
        int to = up ? at - 1 : at + 1;
        List<Step> all = new ArrayList<>(steps);
        if (at >= 0 && to >= 0 && to < all.size()) {
            all.set(at, steps.get(to));
            all.set(to, steps.get(at));
        }
        return all;
    }

    /** A step with other content; its id stays. */
    public static List<Step> change(List<Step> steps, Step changed) {
        return each(steps, step -> step.id().equals(changed.id()) ? changed : step);
    }

    private static List<String> added(List<String> names, String more) {
        List<String> all = new ArrayList<>(names);
        all.add(more);
        return all;
    }
}
