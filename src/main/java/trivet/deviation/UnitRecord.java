package trivet.deviation;

import java.util.List;
import java.util.Optional;
import trivet.check.Check;
import trivet.check.Reading;
import trivet.device.Unit;
import trivet.batch.Dispute;
import trivet.ledger.Entry;

/**
 * What the records say of one fridge, freezer or other unit over some days.
 *
 * @param waiting corrections and late records that wait for somebody who wrote neither
 * @param disputes readings that tablets corrected differently, and of which nobody has picked a version
 */
public record UnitRecord(Unit unit, List<Reading> readings, List<Check> checks, List<Deviation> deviations, String limitWords, List<Entry> waiting, List<Dispute> disputes) {

    /** The last reading. */
    public Optional<Reading> last() {
        return readings.stream().reduce((a, b) -> b);
    }

    /** Whether the last judged reading was past the limit, so that food in the unit is to be probed. */
    public boolean warm() {
        return last().map(reading -> reading.verdict() == trivet.limit.Verdict.BREACHED).orElse(false);
    }
}
