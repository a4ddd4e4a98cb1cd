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
import java.util.stream.Collectors;
import trivet.ledger.Entry;
import trivet.ledger.Ids;
import trivet.ledger.Journal;
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
        return over(day, day);
    }

    /** The same over some days, both inclusive: one a programme and day, from the day its first plan was in force. */
    public List<ProgrammeRecord> over(LocalDate from, LocalDate to) {
        Site site = sites.current().orElseThrow();
        Instant now = clock.instant();
        Instant end = site.end(to);
        Map<String, Plan.Attention> all = new LinkedHashMap<>();
        plans.inForce(end.isBefore(now) ? end : now).forEach(plan -> plan.plan().attention().forEach(programme -> all.putIfAbsent(programme.id(), programme)));
        if (all.isEmpty()) {
            return List.of();
        }
        Map<String, Instant> known = new LinkedHashMap<>();
        plans.history().forEach(plan -> plan.plan().attention().forEach(programme -> known.merge(programme.id(), plan.from(), (a, b) -> a.isBefore(b) ? a : b)));
        boolean yearly = all.values().stream().anyMatch(programme -> programme.often().equals("yearly"));
        Set<Entry> entries = new LinkedHashSet<>(daybook.withNaming(journal.ofKind("programme-check", site.start(from).minus(yearly ? YEAR : MONTH), end)));
        new ArrayList<>(entries).stream().filter(entry -> entry.kind().equals("programme-check") && !entry.data().flag("good")).forEach(entry -> entries.addAll(journal.naming(Ids.derived("programme/" + entry.id()))));
        Set<LocalDate> baking = journal.ofKind("batch-started", site.start(from), end).stream().map(entry -> site.dayOf(entry.claimedAt())).collect(Collectors.toSet());
        ProgrammeRecord.Noted noted = ProgrammeRecord.Noted.of(List.copyOf(entries));
        return from.datesUntil(to.plusDays(1)).flatMap(day -> all.values().stream().filter(programme -> known.get(programme.id()).isBefore(site.end(day)))
                .map(programme -> ProgrammeRecord.of(programme, known.get(programme.id()), site, day, baking.contains(day), noted, now))).toList();
    }
}
