package trivet.deviation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import trivet.ledger.Entry;
import trivet.ledger.Ids;
import trivet.ledger.Journal;
import trivet.plan.ApprovedPlan;
import trivet.plan.Plan;
import trivet.plan.Plans;
import trivet.site.Site;
import trivet.site.Sites;

/** The prerequisite programmes that need greater attention, folded from what was noted of them. */
@ApplicationScoped
public class Programmes {

    /** How far back is read: longer than the longest time between two checks. */
    private static final Duration MONTH = Duration.ofDays(45);
    private static final Duration YEAR = Duration.ofDays(400);

    @Inject
    Daybook daybook;
    @Inject
    Journal journal;
    @Inject
    Plans plans;
    @Inject
    Sites sites;
    @Inject
    Clock clock;

    /** The prerequisite programmes of the plans in force that need greater attention, each once, with their checks of a day. */
    public List<ProgrammeRecord> of(LocalDate day) {
        Map<String, Plan.Attention> all = new LinkedHashMap<>();
        Map<String, Instant> known = new LinkedHashMap<>();
        for (ApprovedPlan plan : plans.inForce(clock.instant())) {
            for (Plan.Attention programme : plan.plan().attention()) {
                all.putIfAbsent(programme.id(), programme);
                known.merge(programme.id(), plan.from(), (a, b) -> a.isBefore(b) ? a : b);
            }
        }
        if (all.isEmpty()) {
            return List.of();
        }
        Site site = sites.current().orElseThrow();
        Instant now = clock.instant();
        boolean yearly = all.values().stream().anyMatch(programme -> programme.often().equals("yearly"));
        Set<Entry> entries = new LinkedHashSet<>(daybook.withNaming(journal.ofKind("programme-check", now.minus(yearly ? YEAR : MONTH), now.plusSeconds(60))));
        new ArrayList<>(entries).stream().filter(entry -> entry.kind().equals("programme-check") && !entry.data().flag("good")).forEach(entry -> entries.addAll(journal.naming(Ids.derived("programme/" + entry.id()))));
        boolean baking = !journal.ofKind("batch-started", site.start(day), site.end(day)).isEmpty();
        return all.values().stream().map(programme -> ProgrammeRecord.of(programme, known.get(programme.id()), site, day, baking, List.copyOf(entries), now)).toList();
    }
}
