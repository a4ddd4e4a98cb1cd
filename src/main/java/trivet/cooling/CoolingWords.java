package trivet.cooling;

import java.math.BigDecimal;
import java.math.RoundingMode;
import trivet.limit.Standing;

/** The sentence that goes with the verdict on a stage: what the rule asks, what happened, and what that means. */
final class CoolingWords {

    private CoolingWords() {
    }

    static String of(StageVerdict verdict) {
        String rule = "Cool " + verdict.stage().words();
        String standing = verdict.stage().basis().standing() == Standing.LAW ? "" : " ("
                + verdict.stage().basis().standing().word() + ")";
        return rule + standing + ": " + happened(verdict);
    }

    private static String happened(StageVerdict verdict) {
        switch (verdict.verdict()) {
            case WITHIN:
                return "met.";
            case BREACHED:
                return "breached, " + verdict.stage().basis().standing().breachWords()
                        + ". Hold the batch and answer the deviation.";
            default:
                return because(verdict);
        }
    }

    private static String because(StageVerdict verdict) {
        return switch (verdict.reason().orElseThrow()) {
            case NO_LIMIT -> "not judged, no number is in force. Adopt one or give your own.";
            case NOT_BEGUN -> "not begun; the food has not been seen at its start temperature.";
            case START_UNKNOWN -> "not judged, it is not known when it began.";
            case OPEN -> rounded(verdict.minutesLeft().orElseThrow()) + " min left.";
            case PASSING_NOT_SEEN -> "not judged, the passing of the start temperature was not seen.";
            case TAKEN_LATE -> "not judged, first seen there " + rounded(verdict.lateBy().orElseThrow())
                    + " min after the deadline.";
            case NOT_MEASURED, HOLD_NOT_RECORDED -> "not judged, nothing was measured in time. A missing reading is no pass.";
        };
    }

    private static String rounded(BigDecimal minutes) {
        return minutes.setScale(0, RoundingMode.DOWN).toPlainString();
    }
}
