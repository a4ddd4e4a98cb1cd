package trivet.study;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.hazard.DecisionTree;
import trivet.hazard.Outcome;
import trivet.hazard.RiskMatrix;
import trivet.study.Study.Answer;
import trivet.study.Study.Hazard;

/**
 * What the weighing and the answers of one hazard lead to.
 *
 * @param level the weight of the matrix; empty until both numbers are given
 * @param route where the weight leads; by the matrix of the plan
 * @param tree what the tree says; empty for a hazard that does not reach it
 */
public record Decision(Optional<Integer> level, Optional<RiskMatrix.Route> route, Optional<DecisionTree.Result> tree) {

    /** What a hazard needs. */
    public enum Needs {
        /** Weighing first. */
        WEIGHT,
        /** Good hygiene practice is enough. */
        GHP,
        /** The question whether the general measures are enough. */
        ENOUGH,
        /** An operational prerequisite programme. */
        OPRP,
        /** The next answer of the tree. */
        ANSWER,
        /** A prerequisite programme that is named, by the first question of the tree. */
        PROGRAMME,
        /** A critical control point. */
        CCP,
        /** A later step that is one. */
        LATER,
        /** Nothing at this step: not a control point here. */
        NOTHING,
        /** Another step, process or product. */
        MODIFY
    }

    /** Decides a hazard by the method of its plan; answers that the path does not reach count for nothing. */
    public static Decision of(Study.Method method, Hazard hazard) {
        RiskMatrix matrix = RiskMatrix.find(method.matrix()).orElse(RiskMatrix.EU_NOTICE_2022);
        DecisionTree tree = DecisionTree.find(method.tree()).orElse(DecisionTree.CODEX_2022);
        return of(method, matrix, tree, hazard);
    }

    /** Decides a hazard by another tree, to compare. */
    public static Decision by(Study.Method method, DecisionTree tree, Hazard hazard) {
        return of(method, RiskMatrix.find(method.matrix()).orElse(RiskMatrix.EU_NOTICE_2022), tree, hazard);
    }

    private static Decision of(Study.Method method, RiskMatrix matrix, DecisionTree tree, Hazard hazard) {
        Optional<Integer> level = Optional.empty();
        Optional<RiskMatrix.Route> route = Optional.empty();
        try {
            if (!hazard.likelihood().isEmpty() && !hazard.severity().isEmpty()) {
                int likelihood = Integer.parseInt(hazard.likelihood());
                int severity = Integer.parseInt(hazard.severity());
                level = Optional.of(matrix.level(likelihood, severity));
                route = Optional.of(matrix.route(likelihood, severity));
            }
        } catch (IllegalArgumentException outside) {
            return new Decision(Optional.empty(), Optional.empty(), Optional.empty());
        }
        boolean toTree = route.isPresent() && (route.get() == RiskMatrix.Route.CONTROL_POINT || (route.get() == RiskMatrix.Route.GHP_OR_OPRP && !method.decide().equals("risk-level")));
        return new Decision(level, route, toTree ? Optional.of(tree.decide(reached(tree, hazard))) : Optional.empty());
    }

    /** The answers of a hazard that the path of a tree reaches. */
    public static Map<String, String> reached(DecisionTree tree, Hazard hazard) {
        Map<String, String> given = new LinkedHashMap<>();
        for (Answer answer : hazard.answers()) {
            String question = answer.question().startsWith(tree.id() + "-") ? answer.question().substring(tree.id().length() + 1) : "";
            if (tree.questions().contains(question) && (answer.answer().equals("yes") || answer.answer().equals("no"))) {
                given.put(question, answer.answer());
            }
        }
        return tree.reached(given);
    }

    /** The name under which the answer to a tree's question stands in a plan. */
    public static String name(DecisionTree tree, String question) {
        return tree.id() + "-" + question;
    }

    /** Whether the hazard is significant. */
    public boolean significant() {
        return route.map(r -> r != RiskMatrix.Route.GHP).orElse(false);
    }

    /** What the hazard needs next or at last. */
    public Needs needs(Hazard hazard) {
        if (route.isEmpty()) {
            return Needs.WEIGHT;
        }
        if (route.get() == RiskMatrix.Route.GHP) {
            return Needs.GHP;
        }
        if (tree.isEmpty()) {
            return hazard.enough().isEmpty() ? Needs.ENOUGH : hazard.enough().equals("true") ? Needs.GHP : Needs.OPRP;
        }
        DecisionTree.Result result = tree.get();
        if (result.outcome().isEmpty()) {
            return Needs.ANSWER;
        }
        if (result.later()) {
            return Needs.LATER;
        }
        Outcome outcome = result.outcome().get();
        boolean byProgramme = result.path().equals(List.of("q1")) && outcome == Outcome.NOT_A_CCP;
        return outcome == Outcome.CCP ? Needs.CCP : outcome == Outcome.MODIFY ? Needs.MODIFY : byProgramme ? Needs.PROGRAMME : Needs.NOTHING;
    }
}
