package trivet.hazard;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.words.Words;

/**
 * A published example of a tree of questions that finds critical control points, asked for each step and each significant hazard.
 *
 * <p>{@link #CODEX_2022}: Codex CXC 1-1969 (2022), tool for the determination of a CCP, printed 2023: Q1 and Q2 with their notes as read in
 * a copy of its figure; order and meaning of Q3 and Q4 as a second source gives them; note on measures in combination from memory.
 * {@link #CODEX_2003}: CXC 1-1969 Rev. 4-2003, annex, diagram 2, from memory. The questions are put in our own words.
 */
public final class DecisionTree {

    private record Branch(Optional<String> next, Optional<Outcome> outcome) {
        static Branch to(String question) {
            return new Branch(Optional.of(question), Optional.empty());
        }

        static Branch end(Outcome outcome) {
            return new Branch(Optional.empty(), Optional.of(outcome));
        }
    }

    private record Question(Branch yes, Branch no) {
    }

    /**
     * What the answers lead to.
     *
     * @param path the questions answered, in the order in which they were reached
     * @param asks the question that waits for an answer; empty when there is an outcome
     * @param later whether the last answer says that a subsequent step controls the hazard, whatever the tree calls that outcome
     */
    public record Result(Optional<Outcome> outcome, List<String> path, Optional<String> asks, String reason, boolean later) {
    }

    /** An answer that cannot be used, and why. */
    public static final class Refused extends IllegalArgumentException {
        private static final long serialVersionUID = 1;
        private final String question;

        Refused(String question, String sentence) {
            super(sentence);
            this.question = question;
        }

        /** The question. */
        public String question() {
            return question;
        }
    }

    /** The tree of the 2022 revision. */
    public static final DecisionTree CODEX_2022 = new DecisionTree("codex-2022", "q1", Map.of(
            "q1", new Question(Branch.end(Outcome.NOT_A_CCP), Branch.to("q2")),
            "q2", new Question(Branch.to("q3"), Branch.end(Outcome.NOT_A_CCP)),
            "q3", new Question(Branch.end(Outcome.LATER_STEP), Branch.to("q4")),
            "q4", new Question(Branch.end(Outcome.CCP), Branch.end(Outcome.MODIFY))), "q3");
    /** The tree of the 2003 revision. */
    public static final DecisionTree CODEX_2003 = new DecisionTree("codex-2003", "q1", Map.of(
            "q1", new Question(Branch.to("q2"), Branch.to("q1a")),
            "q1a", new Question(Branch.end(Outcome.MODIFY), Branch.end(Outcome.NOT_A_CCP)),
            "q2", new Question(Branch.end(Outcome.CCP), Branch.to("q3")),
            "q3", new Question(Branch.to("q4"), Branch.end(Outcome.NOT_A_CCP)),
            "q4", new Question(Branch.end(Outcome.NOT_A_CCP), Branch.end(Outcome.CCP))), "q4");
    /** Every tree. */
    public static final List<DecisionTree> ALL = List.of(CODEX_2022, CODEX_2003);

    private final String id;
    private final String first;
    private final Map<String, Question> questions;
    private final String laterQuestion;

    private DecisionTree(String id, String first, Map<String, Question> questions, String laterQuestion) {
        this.id = id;
        this.first = first;
        this.questions = questions;
        this.laterQuestion = laterQuestion;
    }

    /** The tree of an id. */
    public static Optional<DecisionTree> find(String id) {
        return ALL.stream().filter(tree -> tree.id.equals(id)).findFirst();
    }

    /** The id. */
    public String id() {
        return id;
    }

    /** The questions' names, sorted. */
    public List<String> questions() {
        return questions.keySet().stream().sorted().toList();
    }

    /** A question in words. */
    public String words(String question) {
        return Words.named("question", id + "." + question);
    }

    /** Where the answers, each yes or no, lead; refuses an unknown question, another answer, and an answer that the path does not reach. */
    public Result decide(Map<String, String> answers) {
        answers.forEach((question, answer) -> {
            if (!questions.containsKey(question)) {
                throw new Refused(question, Words.say("j_tree_has_no_question", id, question, String.join(", ", questions())));
            }
            if (!answer.equals("yes") && !answer.equals("no")) {
                throw new Refused(question, Words.say("j_an_answer_is_yes_or_no", answer));
            }
        });
        List<String> path = new ArrayList<>();
        String at = first;
        Optional<Outcome> outcome = Optional.empty();
        boolean later = false;
        while (outcome.isEmpty() && answers.containsKey(at)) {
            path.add(at);
            boolean yes = answers.get(at).equals("yes");
            later = yes && at.equals(laterQuestion);
            Branch branch = yes ? questions.get(at).yes() : questions.get(at).no();
            outcome = branch.outcome();
            at = branch.next().orElse(at);
        }
        for (String question : answers.keySet()) {
            if (!path.contains(question)) {
                throw new Refused(question, Words.say("j_the_path_does_not_reach", question, String.join(", ", path)));
            }
        }
        if (outcome.isEmpty()) {
            return new Result(Optional.empty(), List.copyOf(path), Optional.of(at), Words.say("j_tree_asks", words(at)), false);
        }
        String last = path.get(path.size() - 1);
        return new Result(outcome, List.copyOf(path), Optional.empty(), Words.named("routing", id + "." + last + "." + answers.get(last)), later);
    }

    /** The answers that the path still reaches, in order: what a change of an earlier one leaves standing. */
    public Map<String, String> reached(Map<String, String> answers) {
        Map<String, String> kept = new LinkedHashMap<>();
        String at = first;
        while (at != null && answers.containsKey(at)) {
            kept.put(at, answers.get(at));
            Branch branch = answers.get(at).equals("yes") ? questions.get(at).yes() : questions.get(at).no();
            at = branch.next().orElse(null);
        }
        return kept;
    }
}
