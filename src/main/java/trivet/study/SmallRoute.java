package trivet.study;

import java.util.ArrayList;
import java.util.List;
import trivet.knowledge.Knowledge;
import trivet.words.Words;

/**
 * The simplified route of a small bakery: flow diagram, questionnaire, and control through prerequisite programmes, without ranking of hazards
 * (EFSA BIOHAZ 2017, doi 10.2903/j.efsa.2017.4697, and 2018, doi 10.2903/j.efsa.2018.5432, as their abstracts give it). Where it is not
 * enough is common practice, no source: it says so, and the full route is to be taken.
 */
public final class SmallRoute {

    /** The questions. */
    public static final List<String> QUESTIONS = List.of("usual", "raw-after", "without-air", "vulnerable", "supplies", "claims");
    private static final int LONG_LIFE_DAYS = 5;

    private SmallRoute() {
    }

    /** Why the simplified route is not enough for this plan; empty when nothing speaks against it. */
    public static List<String> against(Study study, Knowledge knowledge) {
        List<String> reasons = new ArrayList<>();
        for (String question : QUESTIONS) {
            boolean wanted = question.equals("usual");
            study.small().stream().filter(answer -> answer.question().equals(question)).findFirst().filter(answer -> answer.answer().equals(wanted ? "no" : "yes"))
                    .ifPresent(answer -> reasons.add(Words.named("smallagainst", question)));
        }
        boolean perishable = new Proposals(study, knowledge).perishable();
        if (perishable && days(study) >= LONG_LIFE_DAYS) {
            reasons.add(Words.say("j_small_long_life", study.description().useBy()));
        }
        if (study.description().glutenFree()) {
            reasons.add(Words.say("j_small_gluten_free"));
        }
        if (study.steps().stream().anyMatch(step -> step.kind().equals("pack-without-air"))) {
            reasons.add(Words.say("j_small_without_air"));
        }
        if (study.description().eaters().stream().anyMatch(List.of("children", "pregnant", "elderly")::contains) && !study.description().eaters().contains("general")) {
            reasons.add(Words.say("j_small_vulnerable"));
        }
        return List.copyOf(new java.util.LinkedHashSet<>(reasons));
    }

    /** Questions that have no answer yet. */
    public static List<String> unanswered(Study study) {
        return QUESTIONS.stream().filter(question -> study.small().stream().noneMatch(answer -> answer.question().equals(question) && !answer.answer().isEmpty())).toList();
    }

    private static int days(Study study) {
        try {
            return study.description().useBy().isEmpty() ? 0 : trivet.measure.Quantity.days(study.description().useBy());
        } catch (IllegalArgumentException unreadable) {
            return 0;
        }
    }
}
