package trivet.check;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * A check of a batch or a unit that falls due at a time.
 *
 * @param subject the batch or unit
 * @param label the batch's code or the unit's name
 * @param missedAt from when it is missed, if nothing took it
 * @param takenBy the record that took it
 */
public record Check(String id, String key, String subject, String label, Instant due, Instant missedAt, State state, Optional<String> takenBy,
        Optional<String> handedTo, String why) {

    /** How long after its due time a check is still in time, inclusive. */
    public static final Duration GRACE = Duration.ofMinutes(15);

    /** What the key of a check by a plan's own criterion begins with; the control's id follows. */
    public static final String OWN = "own-";
    /** What the key of a check of a prerequisite programme begins with. */
    public static final String PROGRAMME = "programme-";

    /** What became of a check. */
    public enum State {
        NOT_YET_DUE, DUE, PAST_DUE, TAKEN, TAKEN_LATE, MISSED, NOT_NEEDED;

        /** The word on screen and paper. */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
        }

        /** Whether somebody should do it now. */
        public boolean open() {
            return this == DUE || this == PAST_DUE;
        }
    }

    /** What is checked, without its number: {@code core}, {@code cool}, {@code put-away}, {@code hot}, {@code unit}, {@code re-check}, {@code own}, {@code programme}. */
    public String sort() {
        return key.startsWith(OWN) ? "own" : key.startsWith(PROGRAMME) ? "programme" : key.replaceAll("-\\d+$", "");
    }

    /** The control of a check by a plan's own criterion. */
    public String item() {
        return key.replaceFirst("^(" + OWN + "|" + PROGRAMME + ")", "").replaceAll("-\\d+$", "");
    }

    /** The state of a check that falls due at a time, was taken at another, or is missed at an end. */
    public static State state(Instant due, Optional<Instant> taken, Instant missedAt, Instant now) {
        if (taken.isPresent()) {
            return taken.get().isAfter(due.plus(GRACE)) ? State.TAKEN_LATE : State.TAKEN;
        }
        if (!now.isBefore(missedAt)) {
            return State.MISSED;
        }
        return now.isBefore(due) ? State.NOT_YET_DUE : now.isAfter(due.plus(GRACE)) ? State.PAST_DUE : State.DUE;
    }
}
