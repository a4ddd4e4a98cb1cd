package trivet.deviation;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import trivet.check.Reading;
import trivet.ledger.Fields;

/**
 * A limit breached, or a control that could not be judged; it cannot be dismissed, only answered.
 *
 * @param subject the batch or the unit
 * @param label the batch's code or the unit's name
 * @param breach true for a breached limit, false for an unjudged control
 * @param limitWords the limit then in force, with its standing
 * @param readings the readings that show it
 * @param answer what was written on its form so far
 * @param closedHow how it was closed; empty while it is not
 */
public record Deviation(String id, String subject, String label, boolean breach, String limit, String words, String limitWords,
        Instant since, List<Reading> readings, State state, Fields answer, Optional<String> answeredBy, Optional<String> closedHow,
        Optional<String> closedBy, Optional<Instant> closedAt, List<String> offers) {

    /** What became of a deviation. */
    public enum State {
        OPEN, ANSWERED, CLOSED;

        /** The word on screen and paper. */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /** Whether it holds its batch. */
    public boolean holds() {
        return state != State.CLOSED;
    }
}
