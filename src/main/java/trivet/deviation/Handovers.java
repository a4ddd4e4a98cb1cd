package trivet.deviation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import trivet.ledger.Entry;
import trivet.ledger.Journal;

/** Shifts that ended while batches were under way, and who took the batches over. */
@ApplicationScoped
public class Handovers {

    /** How long a hand-over may wait for the person it was made to; after it the owner is told. Common practice, no source. */
    public static final Duration PATIENCE = Duration.ofMinutes(10);
    private static final Duration LOOK_BACK = Duration.ofDays(1);

    @Inject
    Journal journal;
    @Inject
    Clock clock;

    /**
     * A hand-over.
     *
     * @param id the record of it
     * @param batches the batches handed over
     * @param takenAt when the person it was made to took them; empty while nobody has
     */
    public record Handover(String id, String from, String to, List<String> batches, Instant at, Optional<Instant> takenAt) {
    }

    /** Those of the last day, the latest first. */
    public List<Handover> list() {
        Instant now = clock.instant();
        List<Entry> taken = journal.ofKind("shift-taken", now.minus(LOOK_BACK), now.plusSeconds(60));
        List<Handover> all = new ArrayList<>(journal.ofKind("shift-ended", now.minus(LOOK_BACK), now.plusSeconds(60)).stream().filter(entry -> !entry.data().texts("batches").isEmpty()).map(entry -> {
            String to = entry.data().text("to").orElse("");
            Optional<Instant> when = taken.stream().filter(one -> one.person().equals(to) && one.data().text("of").map(entry.id()::equals).orElse(false)).map(Entry::claimedAt).findFirst();
            return new Handover(entry.id(), entry.person(), to, entry.data().texts("batches"), entry.claimedAt(), when);
        }).toList());
        Collections.reverse(all);
        return all;
    }

    /** Those that nobody has taken. */
    public List<Handover> open() {
        return list().stream().filter(one -> one.takenAt().isEmpty()).toList();
    }
}
