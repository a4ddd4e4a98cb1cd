package trivet.limit;

import java.util.Locale;

/** What a limit says of something measured: within it, past it, or not to be judged. Missing data is never within. */
public enum Verdict {
    /** Everything that the limit asks was measured, and meets it. */
    WITHIN,
    /** Something measured, or not measured in time, leaves no judgement; it is never taken as a pass. */
    UNJUDGED,
    /** Something measured is past the limit. */
    BREACHED;

    /** The word used in records and answers: {@code within}, {@code unjudged}, {@code breached}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The worse of two: breached, then unjudged, then within. */
    public Verdict orWorse(Verdict other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
