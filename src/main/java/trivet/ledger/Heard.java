package trivet.ledger;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What the tablets say of themselves at each contact, so that what never comes can be named. */
public interface Heard {

    /**
     * What a tablet last said.
     *
     * @param sequence the last number that it used; numbers up to it that have not come wait on it, or are lost
     * @param waiting how many records wait on it
     * @param oldest when the oldest of them was saved
     * @param offsetMs the service's clock less the tablet's, in milliseconds
     */
    record Word(String device, Instant at, long sequence, int waiting, int photos, Optional<Instant> oldest, Optional<Long> offsetMs, Optional<String> build) {
    }

    /**
     * A tablet that was set up anew: another browser store spoke for it.
     *
     * @param received the last number that had come by then
     * @param told the last number that it had said it used
     */
    record Anew(String device, Instant at, long received, long told) {
    }

    /** Keeps what a tablet said; the first word of a browser store that has never spoken for it is kept for good. */
    void heard(Word word, String install);

    /** The last word of every tablet. */
    List<Word> words();

    /** The last word of a tablet. */
    Optional<Word> of(String device);

    /** Every setting up anew of a tablet, the first one left out, the latest first. */
    List<Anew> anew();
}
