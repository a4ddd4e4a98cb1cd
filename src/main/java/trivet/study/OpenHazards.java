package trivet.study;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import trivet.flow.Flow;
import trivet.hazard.DecisionTree;
import trivet.knowledge.Knowledge;
import trivet.study.OpenPoints.OpenPoint;
import trivet.study.Study.Control;
import trivet.study.Study.Hazard;
import trivet.words.Words;

/** What the hazard analysis of a plan lacks: proposals that wait, hazards that are not weighed, answered or controlled, and chains that end nowhere. */
final class OpenHazards {

    private final Study study;
    private final Knowledge knowledge;
    private final Flow flow;
    private final List<OpenPoint> points = new ArrayList<>();

    private OpenHazards(Study study, Knowledge knowledge) {
        this.study = study;
        this.knowledge = knowledge;
        this.flow = study.flow(knowledge);
    }

    static List<OpenPoint> of(Study study, Knowledge knowledge) {
        OpenHazards open = new OpenHazards(study, knowledge);
        open.all();
        return open.points;
    }

    private void add(String part, String at, String words) {
        points.add(new OpenPoint(part, at, words));
    }

    private void need(String part, String at, String value, String words) {
        if (value.isBlank()) {
            add(part, at, words);
        }
    }

    private void all() {
        boolean small = study.method().route().equals("small") && SmallRoute.against(study, knowledge).isEmpty();
        Set<String> seen = new HashSet<>();
        study.hazards().stream().map(Hazard::id).filter(id -> !seen.add(id)).distinct().forEach(id -> add("hazards", id, Words.say("j_open_twice", id)));
        new Proposals(study, knowledge).waiting().stream().collect(Collectors.groupingBy(Proposals.Proposal::step, LinkedHashMap::new, Collectors.counting()))
                .forEach((step, count) -> add("hazards", step, Words.say("j_open_proposals", flow.title(step), count)));
        for (Hazard hazard : study.hazards()) {
            if (flow.step(hazard.step()).isEmpty()) {
                add("hazards", hazard.id(), Words.say("j_open_hazard_step", hazard.title(), hazard.step()));
            } else if (hazard.decision().equals("rejected")) {
                need("hazards", hazard.id(), hazard.reason(), Words.say("j_open_rejected", place(hazard)));
            } else if (hazard.accepted()) {
                accepted(hazard, small);
            } else {
                add("hazards", hazard.id(), Words.say("j_open_undecided", place(hazard)));
            }
        }
    }

    private String place(Hazard hazard) {
        return Words.say("j_hazard_at", hazard.title(), flow.title(hazard.step()));
    }

    private void accepted(Hazard hazard, boolean small) {
        if (small) {
            if (hazard.programmes().isEmpty() && hazard.controls().isEmpty()) {
                need("hazards", hazard.id(), hazard.measures(), Words.say("j_open_no_control", place(hazard)));
            }
            named(hazard);
            return;
        }
        Decision decision = Decision.of(study.method(), hazard);
        if (!hazard.likelihood().isEmpty()) {
            need("hazards", hazard.id(), hazard.justification(), Words.say("j_open_justification", place(hazard)));
        }
        if (decision.significant()) {
            need("hazards", hazard.id(), hazard.acceptable(), Words.say("j_open_acceptable", place(hazard)));
            need("hazards", hazard.id(), hazard.acceptableSource(), Words.say("j_open_acceptable_source", place(hazard)));
        }
        decision.tree().ifPresent(tree -> tree.path().forEach(question -> {
            String name = Decision.name(DecisionTree.find(study.method().tree()).orElse(DecisionTree.CODEX_2022), question);
            hazard.answer(name).ifPresent(answer -> need("hazards", hazard.id(), answer.reason(), Words.say("j_open_answer_reason", place(hazard), question)));
        }));
        switch (decision.needs(hazard)) {
            case WEIGHT -> add("hazards", hazard.id(), Words.say("j_open_weight", place(hazard)));
            case ENOUGH -> add("hazards", hazard.id(), Words.say("j_open_enough", place(hazard)));
            case ANSWER -> add("hazards", hazard.id(), Words.say("j_open_answer", place(hazard), decision.tree().flatMap(DecisionTree.Result::asks).orElse("")));
            case MODIFY -> add("hazards", hazard.id(), Words.say("j_open_modify", place(hazard)));
            case PROGRAMME -> {
                if (hazard.programmes().isEmpty()) {
                    add("hazards", hazard.id(), Words.say("j_open_programme", place(hazard)));
                }
            }
            case CCP -> control(hazard, true);
            case OPRP -> control(hazard, false);
            case LATER -> later(hazard);
            case NOTHING -> nothing(hazard);
            default -> {
                if (hazard.programmes().isEmpty() && hazard.controls().isEmpty()) {
                    need("hazards", hazard.id(), hazard.measures(), Words.say("j_open_no_control", place(hazard)));
                }
            }
        }
        named(hazard);
    }

    private void named(Hazard hazard) {
        hazard.controls().stream().filter(id -> study.control(id).isEmpty()).forEach(id -> add("hazards", hazard.id(), Words.say("j_open_unknown_control", place(hazard), id)));
        hazard.programmes().stream().filter(id -> study.programmes().stream().noneMatch(programme -> programme.id().equals(id))).forEach(id -> add("hazards", hazard.id(), Words.say("j_open_unknown_programme", place(hazard), id)));
    }

    private void control(Hazard hazard, boolean ccp) {
        boolean there = hazard.controls().stream().flatMap(id -> study.control(id).stream()).anyMatch(control -> (control.ccp() || !ccp) && (control.step().equals(hazard.step()) || !ccp));
        if (!there) {
            add("hazards", hazard.id(), ccp ? Words.say("j_open_no_ccp", place(hazard)) : Words.say("j_open_no_oprp", place(hazard)));
        }
    }

    /** A chain of "a later step controls it" has to end at a control point. */
    private void later(Hazard hazard) {
        if (hazard.laterStep().isEmpty()) {
            add("hazards", hazard.id(), Words.say("j_open_later_which", place(hazard)));
            return;
        }
        if (!flow.downstream(hazard.step()).contains(hazard.laterStep())) {
            add("hazards", hazard.id(), Words.say("j_open_later_not_later", place(hazard), flow.title(hazard.laterStep())));
            return;
        }
        if (!controlledAt(hazard, hazard.laterStep(), new LinkedHashSet<>(Set.of(hazard.step())))) {
            add("hazards", hazard.id(), Words.say("j_open_chain", place(hazard), flow.title(hazard.laterStep())));
        }
    }

    private boolean controlledAt(Hazard hazard, String step, Set<String> seen) {
        if (!seen.add(step)) {
            return false;
        }
        boolean control = study.controls().stream().anyMatch(one -> one.step().equals(step) && one.ccp() && controls(one, hazard));
        return control || study.hazards().stream().anyMatch(other -> other.step().equals(step) && other.accepted() && same(other, hazard)
                && Decision.of(study.method(), other).needs(other) == Decision.Needs.LATER && !other.laterStep().isEmpty() && controlledAt(other, other.laterStep(), seen));
    }

    /** Whether a control is named by this hazard or by the same hazard at the control's own step. */
    private boolean controls(Control control, Hazard hazard) {
        return hazard.controls().contains(control.id()) || study.hazards().stream().anyMatch(other -> other.accepted() && same(other, hazard) && other.controls().contains(control.id()));
    }

    private static boolean same(Hazard one, Hazard other) {
        return !one.kind().isEmpty() ? one.kind().equals(other.kind()) : one.title().equals(other.title());
    }

    /** Q2 of 2022 answered no, or Q1a or Q3 of 2003: not here; by the 2022 note some later step has to be one, or the process must be modified. */
    private void nothing(Hazard hazard) {
        boolean by2022 = !study.method().tree().equals("codex-2003");
        boolean later = flow.downstream(hazard.step()).stream().anyMatch(step -> study.controls().stream().anyMatch(control -> control.step().equals(step) && control.ccp() && controls(control, hazard)));
        if (by2022 && !later) {
            add("hazards", hazard.id(), Words.say("j_open_no_later_ccp", place(hazard)));
        }
    }
}
