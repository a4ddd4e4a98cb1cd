package trivet.deviation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import trivet.batch.Life;
import trivet.batch.Told;
import trivet.deviation.Surroundings.Part;
import trivet.deviation.Surroundings.Rules;
import trivet.device.Devices;
import trivet.device.Unit;
import trivet.instrument.ProbeResult;
import trivet.ledger.Entry;
import trivet.ledger.Fields;
import trivet.ledger.Ids;
import trivet.ledger.Journal;
import trivet.plan.ApprovedPlan;
import trivet.plan.Plans;
import trivet.site.Confirmed;
import trivet.site.Site;
import trivet.site.Sites;
import trivet.words.Words;

/** What the records say of batches, units and days, folded anew each time it is asked. */
@ApplicationScoped
public class Daybook {

    private static final Duration LONGEST_LIFE = Duration.ofDays(14);
    private static final Duration LOOK_BACK = Duration.ofDays(60);

    @Inject
    Journal journal;
    @Inject
    Sites sites;
    @Inject
    Plans plans;
    @Inject
    Devices devices;
    @Inject
    Clock clock;

    /** The rulebooks of the site by time. */
    Rules rules() {
        return new Rules() {
            @Override
            public Optional<Confirmed> at(Instant moment) {
                return sites.inForceAt(moment);
            }

            @Override
            public List<Confirmed> between(Instant from, Instant to) {
                return sites.inForceBetween(from, to);
            }
        };
    }

    private Site site() {
        return sites.current().orElseThrow();
    }

    /** The batch of that id; empty when no record has begun it. */
    public Optional<BatchRecord> batch(String id) {
        return batch(id, List.of());
    }

    /** The batch as it would be with a further record that has just come in. */
    Optional<BatchRecord> batch(String id, List<Entry> further) {
        List<Entry> entries = new ArrayList<>(journal.ofBatch(id));
        entries.addAll(further);
        return fold(id, entries, Optional.empty());
    }

    private Optional<BatchRecord> fold(String id, List<Entry> own, Optional<ProbeBook> known) {
        Optional<Part> part = Optional.empty();
        List<Entry> entries = own;
        if (own.stream().noneMatch(entry -> entry.kind().equals("batch-started") && entry.batch().map(id::equals).orElse(false))) {
            Optional<Entry> split = own.stream().filter(entry -> entry.kind().equals("split")).findFirst();
            part = split.flatMap(entry -> part(id, entry));
            if (part.isEmpty()) {
                return Optional.empty();
            }
            Set<Entry> inherited = new LinkedHashSet<>(journal.ofBatch(part.get().parent()));
            inherited.removeIf(entry -> entry.kind().equals("gone") || entry.kind().equals("destroyed"));
            inherited.addAll(own);
            entries = List.copyOf(inherited);
            if (entries.stream().noneMatch(entry -> entry.kind().equals("batch-started"))) {
                return Optional.empty();
            }
        }
        Set<Entry> all = new LinkedHashSet<>(entries);
        for (Entry entry : entries) {
            if (entry.kind().equals("correction") || entry.writtenMuchLater()) {
                all.addAll(journal.naming(entry.id()));
            }
        }
        Entry start = entries.stream().filter(entry -> entry.kind().equals("batch-started")).findFirst().orElseThrow();
        Optional<ApprovedPlan> plan = start.data().flag("unplanned") ? Optional.empty()
                : start.data().text("product").flatMap(product -> plans.inForceAt(product, start.claimedAt()));
        Surroundings around = new Surroundings(site(), rules(), clock.instant(), plan, new BatchPlans(plans, plan), part, known.orElseGet(() -> probes(start.claimedAt())), this::since);
        List<Entry> list = List.copyOf(all);
        return Told.ways(list).stream().map(told -> BatchJudgement.of(new BatchFold(around, list, told))).reduce(Daybook::worse);
    }

    private Optional<UnitRecord> since(String id, Instant from) {
        Instant now = clock.instant();
        return devices.unit(id).map(unit -> UnitFold.of(unit, site(), rules(), withNaming(journal.ofUnit(id, from, now.plusSeconds(1))), List.of(), Set.of(), now));
    }

    List<Entry> withNaming(List<Entry> entries) {
        Set<Entry> all = new LinkedHashSet<>(entries);
        for (Entry entry : entries) {
            for (Entry naming : journal.naming(entry.id())) {
                all.add(naming);
                if (naming.kind().equals("correction")) {
                    all.addAll(journal.naming(naming.id()));
                }
            }
        }
        return List.copyOf(all);
    }

    /** The checks of probes that matter to readings from a moment on. */
    private ProbeBook probes(Instant from) {
        Instant now = clock.instant();
        List<Entry> checks = journal.ofKind("probe-check", from.minus(LOOK_BACK), now.plusSeconds(1));
        return new ProbeBook(Told.of(withNaming(checks), true), rules(), site(), devices::probeKnownSince);
    }

    private static Optional<Part> part(String id, Entry split) {
        return split.data().objects("parts").stream().filter(p -> p.text("batch").map(id::equals).orElse(false)).findFirst()
                .map(p -> new Part(id, p.text("code").orElse("?"), split.batch().orElse(""), p.integer("trays").orElse(0), p.integer("pieces").orElse(0),
                        p.text("purpose").map("hot"::equals).orElse(false)));
    }

    /** Both readings of the doubtful records laid together: of every verdict, deviation and hold the worse stands. */
    private static BatchRecord worse(BatchRecord with, BatchRecord without) {
        if (without.life() == Life.DESTROYED && with.life() != Life.DESTROYED) {
            return without;
        }
        Map<String, Deviation> deviations = new LinkedHashMap<>();
        with.deviations().forEach(d -> deviations.put(d.id(), d));
        without.deviations().forEach(d -> deviations.merge(d.id(), d, (a, b) -> a.state().compareTo(b.state()) <= 0 ? a : b));
        Map<String, Hold> holds = new LinkedHashMap<>();
        with.holds().forEach(hold -> holds.put(hold.id(), hold));
        if (!with.life().over()) {
            without.holds().forEach(hold -> holds.putIfAbsent(hold.id(), hold));
        }
        boolean bettered = without.cook().compareTo(with.cook()) > 0 || without.cooling().compareTo(with.cooling()) > 0;
        if (bettered && holds.isEmpty() && !with.life().over()) {
            Hold waits = new Hold(Ids.derived(with.id() + "/waiting"), Words.say("j_a_late_record_or_a_correction"), with.startedAt());
            holds.put(waits.id(), waits);
        }
        BatchRecord.Next next = holds.size() > with.holds().size()
                ? new BatchRecord.Next(Words.say("j_a_late_record_or_a_correction"), "accept") : with.next();
        return with.with(with.cook().orWorse(without.cook()), with.cooling().orWorse(without.cooling()), List.copyOf(deviations.values()), List.copyOf(holds.values()), next);
    }

    /** The batches that are not over, of the last fortnight. */
    public List<BatchRecord> underway() {
        Instant now = clock.instant();
        return begun(now.minus(LONGEST_LIFE), now.plus(Duration.ofDays(1))).stream()
                .filter(batch -> !batch.life().over() || batch.deviations().stream().anyMatch(Deviation::holds)).toList();
    }

    /** The batches begun between two moments, parts of split ones after their parents. */
    public List<BatchRecord> begun(Instant from, Instant to) {
        List<String> ids = new ArrayList<>();
        for (Entry entry : journal.ofKind("batch-started", from, to)) {
            ids.add(entry.batch().orElse(entry.id()));
        }
        List<BatchRecord> records = new ArrayList<>();
        Optional<ProbeBook> probes = Optional.of(probes(from));
        journal.ofBatches(ids).forEach((id, entries) -> fold(id, entries, probes).ifPresent(record -> {
            records.add(record);
            record.entries().stream().filter(entry -> entry.kind().equals("split")).flatMap(entry -> entry.data().objects("parts").stream())
                    .flatMap(part -> part.text("batch").stream()).forEach(part -> batch(part).ifPresent(records::add));
        }));
        records.sort(Comparator.comparing(BatchRecord::startedAt));
        return records;
    }

    /** The business days from one date to another, both inclusive. */
    public List<Day> days(LocalDate from, LocalDate to) {
        Site site = site();
        Instant start = site.start(from);
        Instant end = site.end(to);
        Map<LocalDate, List<BatchRecord>> batches = begun(start, end).stream().collect(Collectors.groupingBy(BatchRecord::day));
        Map<LocalDate, List<Entry>> entries = journal.between(start, end).stream().collect(Collectors.groupingBy(entry -> site.dayOf(entry.claimedAt())));
        List<Entry> closed = journal.ofKind("closed-day", start.minus(Duration.ofDays(31)), end.plus(Duration.ofDays(31)));
        List<Entry> reviews = journal.ofKind("day-reviewed", start, clock.instant().plusSeconds(1));
        List<Day> days = new ArrayList<>();
        for (LocalDate day = from; !day.isAfter(to); day = day.plusDays(1)) {
            String date = day.toString();
            days.add(new Day(day, batches.getOrDefault(day, List.of()), entries.getOrDefault(day, List.of()),
                    closed.stream().filter(e -> e.data().text("day").map(date::equals).orElse(false)).findFirst(),
                    reviews.stream().filter(e -> e.data().text("day").map(date::equals).orElse(false)).toList()));
        }
        return days;
    }

    /** What was recorded of each unit in use over some days, both inclusive. */
    public List<UnitRecord> units(LocalDate from, LocalDate to) {
        Site site = site();
        List<LocalDate> days = from.datesUntil(to.plusDays(1)).toList();
        Set<LocalDate> closed = days(from, to).stream().filter(day -> day.closed().isPresent()).map(Day::date).collect(Collectors.toSet());
        List<UnitRecord> units = new ArrayList<>();
        for (Unit unit : devices.units()) {
            if (unit.active() && !unit.kind().limit().isEmpty()) {
                Set<Entry> entries = new LinkedHashSet<>(withNaming(journal.ofUnit(unit.id(), site.start(from), site.end(to))));
                UnitRecord bare = UnitFold.of(unit, site, rules(), List.copyOf(entries), days, closed, clock.instant());
                bare.deviations().forEach(deviation -> entries.addAll(journal.naming(deviation.id())));
                units.add(UnitFold.of(unit, site, rules(), List.copyOf(entries), days, closed, clock.instant()));
            }
        }
        return units;
    }

    /** The highest counter among the codes of the last 60 days, so that the next one is free; 0 for none. */
    public int lastCode() {
        Instant now = clock.instant();
        return journal.ofKind("batch-started", now.minus(LOOK_BACK), now.plusSeconds(60)).stream().flatMap(entry -> entry.data().text("code").stream())
                .filter(code -> code.matches("[A-Z]+-\\d{1,9}")).mapToInt(code -> Integer.parseInt(code.replaceAll("\\D", ""))).max().orElse(0);
    }

    /** Today's business day. */
    public LocalDate today() {
        return site().dayOf(clock.instant());
    }

    /** Why a probe is blocked now, as a sentence; empty when it may be used. */
    public Optional<String> probeBlocked(String probe) {
        return probes(clock.instant()).blocked(probe, clock.instant());
    }

    /** Which probe may be trusted at moments of the last weeks, or later. */
    public ProbeTrust probeTrust() {
        return probes(clock.instant());
    }

    /** The last check of a probe. */
    public Optional<Told> lastProbeCheck(String probe) {
        return probes(clock.instant()).lastOf(probe, clock.instant());
    }

    /** What a probe that failed its last check measured since its last good one, what would turn first. */
    public List<ProbeTouch> touchedBy(String probe) {
        Instant now = clock.instant();
        List<Told> checks = Told.of(withNaming(journal.ofKind("probe-check", now.minus(LOOK_BACK), now.plusSeconds(1))), true);
        ProbeBook book = new ProbeBook(checks, rules(), site(), devices::probeKnownSince);
        return book.lastOf(probe, now).filter(last -> !book.passed(last.data(), last.at())).map(last -> ProbeTouch.of(probe, checks, book,
                journal.between(now.minus(LOOK_BACK), now.plusSeconds(1)), rules())).orElse(List.of());
    }

    /** The checks of a probe of the last 60 days, the latest first. */
    public List<Told> probeChecks(String probe) {
        Instant now = clock.instant();
        List<Told> all = new ArrayList<>(Told.of(withNaming(journal.ofKind("probe-check", now.minus(LOOK_BACK), now.plusSeconds(1))), true).stream()
                .filter(told -> told.kind().equals("probe-check") && told.data().text("probe").map(probe::equals).orElse(false)).toList());
        java.util.Collections.reverse(all);
        return all;
    }

    /** The error that a probe's check showed, and how surely it lies within the tolerance. */
    public Optional<ProbeResult> probeResult(Told check) {
        return probes(check.at()).result(check.data(), check.at());
    }

    boolean probePassed(Fields data, Instant at) {
        return probes(at).passed(data, at);
    }
}
