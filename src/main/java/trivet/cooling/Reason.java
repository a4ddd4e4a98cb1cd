package trivet.cooling;

import java.util.Locale;

/** Why a stage, or a control, cannot be judged. */
public enum Reason {
    /** The rulebook has no number here and the owner adopted none. */
    NO_LIMIT,
    /** The food has not yet been seen at or below the temperature from which the stage counts. */
    NOT_BEGUN,
    /** The time from which the stage counts is not known. */
    START_UNKNOWN,
    /** The deadline has not come. */
    OPEN,
    /** The food passed the start temperature unseen, and the answer depends on when. */
    PASSING_NOT_SEEN,
    /** The target was first seen met after the deadline; whether it was met in time is not known. */
    TAKEN_LATE,
    /** The deadline has passed with no reading to judge by. */
    NOT_MEASURED,
    /** The temperature is high enough for a row, but how long it was held was not recorded. */
    HOLD_NOT_RECORDED;

    /** The word used in answers, for example {@code passing-not-seen}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether the matter is only waiting for its time, and therefore holds nothing. */
    public boolean waiting() {
        return this == OPEN || this == NOT_BEGUN;
    }
}
