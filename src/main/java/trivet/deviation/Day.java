package trivet.deviation;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import trivet.ledger.Entry;

/** A business day: the batches begun on it, and what else was recorded. */
public record Day(LocalDate date, List<BatchRecord> batches, List<Entry> entries, Optional<Entry> closed, List<Entry> reviews) {

    /** Whether somebody who recorded nothing else that day, or at least not everything, has looked at it. */
    public boolean reviewed() {
        return !reviews.isEmpty();
    }
}
