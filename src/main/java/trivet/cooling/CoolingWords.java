package trivet.cooling;

import java.math.BigDecimal;
import java.math.RoundingMode;
import trivet.limit.Standing;
import trivet.words.Words;

/** The sentence that goes with the verdict on a stage: what the rule asks, what happened, and what that means. */
final class CoolingWords {

    private CoolingWords() {
    }

    static String of(StageVerdict verdict) {
        String rule = Words.say("j_cool", verdict.stage().words());
        String standing = verdict.stage().basis().standing() == Standing.LAW ? "" : " ("
                + verdict.stage().basis().standing().words() + ")";
        return rule + standing + ": " + happened(verdict);
    }

    private static String happened(StageVerdict verdict) {
        switch (verdict.verdict()) {
            case WITHIN:
                return Words.say("j_met");
            case BREACHED:
                return Words.say("j_breached_hold_the_batch_and_answer", verdict.stage().basis().standing().breachWords());
            default:
                return because(verdict);
        }
    }

    private static String because(StageVerdict verdict) {
        return switch (verdict.reason().orElseThrow()) {
            case NO_LIMIT -> Words.say("j_not_judged_no_number_is_in");
            case NOT_BEGUN -> Words.say("j_not_begun_the_food_has_not");
            case START_UNKNOWN -> Words.say("j_not_judged_it_is_not_known");
            case OPEN -> Words.say("j_min_left", rounded(verdict.minutesLeft().orElseThrow()));
            case PASSING_NOT_SEEN -> Words.say("j_not_judged_the_passing_of_the");
            case TAKEN_LATE -> Words.say("j_not_judged_first_seen_there_min", rounded(verdict.lateBy().orElseThrow()));
            case NOT_MEASURED, HOLD_NOT_RECORDED -> Words.say("j_not_judged_nothing_was_measured_in");
        };
    }

    private static String rounded(BigDecimal minutes) {
        return minutes.setScale(0, RoundingMode.DOWN).toPlainString();
    }
}
