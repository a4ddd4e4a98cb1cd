package trivet.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import trivet.batch.Told;
import trivet.ledger.BestTime;
import trivet.ledger.Entry;
import trivet.ledger.Fields;
import trivet.ledger.VersionRef;
import trivet.limit.Verdict;
import trivet.limit.file.TestRulebooks;
import trivet.measure.Temperature;
import trivet.site.Confirmed;

/** A cooling during which another rulebook was confirmed is judged by both, and the worse counts. */
class TwoVersionsTest {

    private static final Instant START = Instant.parse("2026-10-01T05:00:00Z");

    private static Confirmed confirmed(String id, int number, int minute) {
        return new Confirmed(TestRulebooks.find(id).withSuggestions(), new VersionRef(id, number, "0".repeat(64)), "olive", START.plus(Duration.ofMinutes(minute)), Set.of(), List.of());
    }

    private static Told told(int minute) {
        Instant at = START.plus(Duration.ofMinutes(minute));
        Entry entry = new Entry(minute, "r" + minute, "cooling-reading", "site", "A", minute, "ana", Optional.of("b"), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), "typed", Optional.empty(), BestTime.sure(at, at), at, "UTC", Fields.of(Map.of()), "", Fields.NONE);
        return new Told(entry, Fields.NONE, at, List.of(), false);
    }

    private static Verdict judged(List<Confirmed> spanning) {
        CoolingControl control = new CoolingControl();
        control.outOfOven(START);
        control.reading(told(0), Temperature.celsius("63.0"));
        control.reading(told(110), Temperature.celsius("20.6"));
        control.reading(told(350), Temperature.celsius("4.8"));
        return control.judged((from, to) -> spanning, START.plus(Duration.ofMinutes(350)), reading -> Optional.empty()).get(0).verdict().whole();
    }

    @Test
    void the_worse_of_two_rulebooks_counts() {
        Confirmed us = confirmed("us-food-code-2022", 1, -10);
        Confirmed ireland = confirmed("ireland", 2, 100);
        assertEquals(Verdict.WITHIN, judged(List.of(us)));
        assertEquals(Verdict.BREACHED, judged(List.of(ireland)));
        assertEquals(Verdict.BREACHED, judged(List.of(us, ireland)));
        assertEquals(Verdict.BREACHED, judged(List.of(ireland, us)));
    }
}
