package trivet.batch;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import trivet.ledger.Entry;
import trivet.ledger.Fields;

/**
 * One record that several tablets corrected differently, each perhaps without knowing of the other. None of them counts for the better until a
 * person has picked one; the worst of them counts for the worse meanwhile.
 *
 * @param of the record
 * @param versions what each tablet would have it be, in the order of receipt
 */
public record Dispute(Entry of, List<Version> versions) {

    /** What may be accepted of all that waits: the ids of the records that no dispute is about, in their order. */
    public static List<String> acceptable(List<Entry> waiting, List<Dispute> disputes) {
        return waiting.stream().map(Entry::id).filter(id -> disputes.stream().noneMatch(dispute -> dispute.has(id))).toList();
    }

    private boolean has(String correction) {
        return versions.stream().flatMap(version -> version.corrections().stream()).anyMatch(entry -> entry.id().equals(correction));
    }

    /**
     * What the corrections of one tablet would make of the record.
     *
     * @param corrections in the order of receipt
     */
    public record Version(List<Entry> corrections, Fields data, Instant at, boolean voided) {

        /** The last correction, by whose id the version is picked. */
        public Entry last() {
            return corrections.get(corrections.size() - 1);
        }

        /** Its temperature as it should read, where it has one and counts. */
        public Optional<String> value() {
            return voided ? Optional.empty() : data.temperature("temperature").map(Object::toString);
        }

        boolean sameAs(Version other) {
            return voided == other.voided && (voided || (at.equals(other.at) && data.asMap().equals(other.data.asMap())));
        }
    }
}
