package trivet.flow;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import trivet.words.Words;

/** The steps of a product and what leads to what, as a graph; order in the list is for reading, {@code after} is the truth. */
public final class Flow {

    private final List<Step> steps;
    private final Map<String, Step> byId = new LinkedHashMap<>();
    private final Function<String, Traits> traits;

    /**
     * A flow.
     *
     * @param traits what each kind of step means
     */
    public Flow(List<Step> steps, Function<String, Traits> traits) {
        this.steps = List.copyOf(steps);
        this.traits = traits;
        steps.forEach(step -> byId.putIfAbsent(step.id(), step));
    }

    /** The steps. */
    public List<Step> steps() {
        return steps;
    }

    /** The step of an id. */
    public Optional<Step> step(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    /** The title of a step, or its bare id. */
    public String title(String id) {
        return step(id).map(Step::title).filter(title -> !title.isEmpty()).orElse(id);
    }

    /** The steps that come straight after one, rework not counted. */
    public List<Step> following(String id) {
        return steps.stream().filter(step -> step.after().contains(id)).toList();
    }

    /** Every step that one leads to at last, rework not counted; itself only in a loop. */
    public Set<String> downstream(String id) {
        return walk(id, at -> following(at).stream().map(Step::id).toList());
    }

    /** Every step that leads to one at last, rework not counted; itself only in a loop. */
    public Set<String> upstream(String id) {
        return walk(id, at -> step(at).map(Step::after).orElse(List.of()));
    }

    private static Set<String> walk(String from, Function<String, List<String>> next) {
        Set<String> seen = new LinkedHashSet<>();
        Deque<String> waiting = new ArrayDeque<>(next.apply(from));
        while (!waiting.isEmpty()) {
            String at = waiting.poll();
            if (seen.add(at)) {
                waiting.addAll(next.apply(at));
            }
        }
        return seen;
    }

    /** Whether what comes to a step has been made safe before: a step that makes safe lies before it on every way that does not begin after. */
    public boolean ready(String id) {
        return upstream(id).stream().anyMatch(before -> traits(before).makesSafe());
    }

    private Traits traits(String id) {
        return step(id).map(step -> traits.apply(step.kind())).orElse(Traits.MIDDLE);
    }

    /** The ids in an order in which every step stands after those that lead to it, as far as there is no loop. */
    public List<Step> inOrder() {
        List<Step> ordered = new ArrayList<>();
        Set<String> done = new HashSet<>();
        List<Step> left = new ArrayList<>(steps);
        while (!left.isEmpty()) {
            Step next = left.stream().filter(step -> step.after().stream().allMatch(before -> done.contains(before) || !byId.containsKey(before))).findFirst().orElse(left.get(0));
            left.remove(next);
            done.add(next.id());
            ordered.add(next);
        }
        return ordered;
    }

    /**
     * Everything that is wrong with the flow; empty when nothing is.
     *
     * @param inputs the ingredients of the recipe
     * @param raw whether an ingredient is raw, so that it must not meet food that is ready to eat
     */
    public List<FlowProblem> problems(List<String> inputs, Predicate<String> raw) {
        List<FlowProblem> problems = new ArrayList<>();
        if (steps.isEmpty()) {
            problems.add(new FlowProblem("empty", "", Words.say("j_flow_empty")));
            return problems;
        }
        Map<String, Integer> count = new HashMap<>();
        for (Step step : steps) {
            if (count.merge(step.id(), 1, Integer::sum) == 2) {
                problems.add(new FlowProblem("twice", step.id(), Words.say("j_flow_twice", step.id())));
            }
            for (String before : step.after()) {
                if (!byId.containsKey(before)) {
                    problems.add(new FlowProblem("unknown-step", step.id(), Words.say("j_flow_unknown_step", title(step.id()), before)));
                }
            }
            for (String from : step.reworkFrom()) {
                if (!byId.containsKey(from)) {
                    problems.add(new FlowProblem("unknown-step", step.id(), Words.say("j_flow_unknown_step", title(step.id()), from)));
                } else if (!from.equals(step.id()) && !downstream(step.id()).contains(from)) {
                    problems.add(new FlowProblem("rework-forward", step.id(), Words.say("j_flow_rework_forward", title(from), title(step.id()))));
                }
            }
        }
        ways(problems);
        lines(problems);
        inputs(problems, inputs, raw);
        return problems;
    }

    private void ways(List<FlowProblem> problems) {
        Set<String> reached = new HashSet<>();
        for (Step step : steps) {
            if (step.after().isEmpty() && traits(step.id()).begins()) {
                reached.add(step.id());
                reached.addAll(downstream(step.id()));
            }
        }
        for (Step step : byId.values()) {
            boolean loops = downstream(step.id()).contains(step.id());
            if (loops) {
                problems.add(new FlowProblem("loop", step.id(), Words.say("j_flow_loop", title(step.id()))));
            } else if (!reached.contains(step.id())) {
                problems.add(new FlowProblem("unreachable", step.id(), Words.say("j_flow_unreachable", title(step.id()))));
            }
            boolean reworked = steps.stream().anyMatch(other -> other.reworkFrom().contains(step.id()));
            if (!loops && following(step.id()).isEmpty() && !reworked && !traits(step.id()).ends()) {
                problems.add(new FlowProblem("leads-nowhere", step.id(), Words.say("j_flow_leads_nowhere", title(step.id()))));
            }
        }
    }

    private void lines(List<FlowProblem> problems) {
        for (Step step : byId.values()) {
            List<String> from = new ArrayList<>(step.after());
            from.addAll(step.reworkFrom());
            for (String before : from) {
                boolean crosses = step.line().equals("gluten-free") && step(before).map(Step::line).filter("wheat"::equals).isPresent();
                if (crosses) {
                    problems.add(new FlowProblem("lines-cross", step.id(), Words.say("j_flow_lines_cross", title(before), title(step.id()))));
                }
            }
        }
    }

    private void inputs(List<FlowProblem> problems, List<String> inputs, Predicate<String> raw) {
        for (String input : inputs) {
            if (steps.stream().noneMatch(step -> step.inputs().contains(input))) {
                problems.add(new FlowProblem("unused-input", input, Words.say("j_flow_unused_input", input)));
            }
        }
        for (Step step : byId.values()) {
            for (String input : step.inputs()) {
                if (!inputs.contains(input)) {
                    problems.add(new FlowProblem("unknown-input", step.id(), Words.say("j_flow_unknown_input", title(step.id()), input)));
                }
            }
            List<String> rawHere = step.inputs().stream().filter(raw).toList();
            boolean madeSafeAfter = traits(step.id()).makesSafe() || downstream(step.id()).stream().anyMatch(later -> traits(later).makesSafe());
            if (ready(step.id()) && !rawHere.isEmpty() && !madeSafeAfter) {
                problems.add(new FlowProblem("raw-meets-ready", step.id(), Words.say("j_flow_raw_meets_ready", title(step.id()), String.join(", ", rawHere))));
            }
            boolean readyOne = step.after().stream().anyMatch(this::leavesReady);
            boolean rawOne = step.after().stream().anyMatch(before -> byId.containsKey(before) && !leavesReady(before) && carriesRaw(before, raw));
            if (readyOne && rawOne && !madeSafeAfter) {
                problems.add(new FlowProblem("raw-meets-ready", step.id(), Words.say("j_flow_raw_way_meets_ready", title(step.id()))));
            }
        }
    }

    private boolean leavesReady(String id) {
        return traits(id).makesSafe() || ready(id);
    }

    private boolean carriesRaw(String id, Predicate<String> raw) {
        Set<String> all = new LinkedHashSet<>(upstream(id));
        all.add(id);
        return all.stream().flatMap(at -> step(at).stream()).anyMatch(step -> step.inputs().stream().anyMatch(raw));
    }
}
