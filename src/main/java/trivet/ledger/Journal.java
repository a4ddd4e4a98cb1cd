package trivet.ledger;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reading what was recorded; every list is in the order of receipt. */
public interface Journal {

    /** The record of that id. */
    Optional<Entry> find(String id);

    /** The records of a batch, and those that name it or one of its records. */
    List<Entry> ofBatch(String batch);

    /** The same for many batches at once. */
    Map<String, List<Entry>> ofBatches(Collection<String> batches);

    /** The readings of a fridge, freezer or other unit by claimed time, and what names them. */
    List<Entry> ofUnit(String unit, Instant fromInclusive, Instant toExclusive);

    /** The records of a kind by claimed time. */
    List<Entry> ofKind(String kind, Instant fromInclusive, Instant toExclusive);

    /** All records by claimed time. */
    List<Entry> between(Instant fromInclusive, Instant toExclusive);

    /** The records that name a record, a check or a deviation. */
    List<Entry> naming(String id);

    /** The highest sequence number received from a device; 0 for none. */
    long lastSequence(String device);

    /**
     * Sequence numbers of a device that have not come, both ends inclusive: records that were lost, refused, or still wait on the tablet.
     *
     * @param noticedAt when the record after them came
     */
    record Gap(String device, long first, long last, Instant noticedAt) {
    }

    /** The gaps in the devices' sequences, the latest noticed first, at most so many. */
    List<Gap> gaps(int most);

    /** The number of the last record received; 0 for none. */
    long lastNumber();

    /** When the last record was received, by the service's clock then; empty for none. */
    Optional<Instant> lastReceived();
}
