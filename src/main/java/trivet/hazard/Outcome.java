package trivet.hazard;

import java.util.Locale;

/** What a decision tree says of one hazard at one step. */
public enum Outcome {
    /** Critical control point. */
    CCP,
    /** No critical control point. */
    NOT_A_CCP,
    /** No critical control point here: a subsequent step controls the hazard, and that step should be one. */
    LATER_STEP,
    /** The step, process or product is to be modified, and the analysis started again. */
    MODIFY;

    /** The word in files and answers. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
