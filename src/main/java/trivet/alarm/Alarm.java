package trivet.alarm;

import java.time.Instant;

/**
 * A matter that somebody should have seen to by now. It is raised once, under the id of what it is about.
 *
 * @param kind what sort of matter it is
 * @param label the batch, unit, person or tablet
 * @param cause the limit, check or delay behind it, by which alarms are counted
 * @param words what to do, in a sentence
 * @param link the page on which to do it
 * @param since from when on it should have been seen to
 */
public record Alarm(String id, Kind kind, String label, String cause, String words, String link, Instant since) {

    /** Sorts of matters. */
    public enum Kind {
        PAST_DUE, UNANSWERED, NOT_TAKEN_OVER, SILENT_TABLET, SERVICE_CLOCK;

        /** The word by which it is stored and named. */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
        }

        /** The kind of a word. */
        public static Kind of(String word) {
            return valueOf(word.toUpperCase(java.util.Locale.ROOT).replace('-', '_'));
        }
    }
}
