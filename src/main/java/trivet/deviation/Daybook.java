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
import trivet.check.Reading;
import trivet.deviation.BatchFold.Part;
import trivet.deviation.BatchFold.Rules;
import trivet.deviation.BatchFold.Surroundings;
import trivet.device.Devices;
import trivet.device.Unit;
import trivet.ledger.Entry;
import trivet.ledger.Fields;
import trivet.ledger.Journal;
import trivet.limit.Verdict;
import trivet.plan.ApprovedPlan;
import trivet.plan.Plans;
import trivet.site.Confirmed;
import trivet.site.Site;
import trivet.site.Sites;

/** What the records say of batches, units and days, folded anew each time it is asked. */
@ApplicationScoped
public class Daybook {

    private static final Duration LONGEST_LIFE = Duration.ofDays(14);

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

    private Rules rules() {
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
        return fold(id, entries);
    }

    private Optional<BatchRecord> fold(String id, List<Entry> own) {
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
        Surroundings around = new Surroundings(site(), rules(), clock.instant(), plan, part);
        List<Entry> list = List.copyOf(all);
        BatchRecord with = new BatchFold(around, list, true).record();
        boolean doubtful = with.told().stream().anyMatch(told -> told.waiting());
        BatchRecord record = doubtful ? worse(with, new BatchFold(around, list, false).record()) : with;
        return Optional.of(unitHolds(record));
    }

    private static Optional<Part> part(String id, Entry split) {
        return split.data().objects("parts").stream().filter(p -> p.text("batch").map(id::equals).orElse(false)).findFirst()
                .map(p -> new Part(id, p.text("code").orElse("?"), split.batch().orElse(""), p.integer("trays").orElse(0), p.integer("pieces").orElse(0),
                        p.text("purpose").map("hot"::equals).orElse(false)));
    }

    /** Both readings of the doubtful records laid together: of every verdict, deviation and hold the worse stands. */
    private static BatchRecord worse(BatchRecord with, BatchRecord without) {
        Map<String, Deviation> deviations = new LinkedHashMap<>();
        with.deviations().forEach(d -> deviations.put(d.id(), d));
        without.deviations().forEach(d -> deviations.merge(d.id(), d, (a, b) -> a.state().compareTo(b.state()) <= 0 ? a : b));
        Map<String, Hold> holds = new LinkedHashMap<>();
        with.holds().forEach(hold -> holds.put(hold.id(), hold));
        if (!with.life().over()) {
            without.holds().forEach(hold -> holds.putIfAbsent(hold.id(), hold));
        }
        boolean coolingWorse = without.cooling().compareTo(with.cooling()) > 0;
        BatchRecord.Next next = holds.size() > with.holds().size()
                ? new BatchRecord.Next("A late record or a correction waits for a second person to accept it.", "accept") : with.next();
        return new BatchRecord(with.id(), with.code(), with.title(), with.unplanned(), with.line(), with.trays(), with.pieces(), with.startedBy(),
                with.startedAt(), with.day(), with.plan(), with.life(), with.parent(), with.outOfOven(), with.putAwayAt(), with.unit(), with.useBy(),
                with.cook().orWorse(without.cook()), with.cookReadings(), coolingWorse ? without.cooling() : with.cooling(), with.runs(), with.checks(),
                List.copyOf(deviations.values()), List.copyOf(holds.values()), with.told(), with.entries(), next);
    }

    /** Holds the batch while its fridge has been seen warm and its own food not probed within since. */
    private BatchRecord unitHolds(BatchRecord batch) {
        if (batch.unit().isEmpty() || batch.life() != Life.STORED || devices.unit(batch.unit().get()).isEmpty()) {
            return batch;
        }
        Unit unit = devices.unit(batch.unit().get()).get();
        Instant from = batch.putAwayAt().orElseThrow();
        Instant now = clock.instant();
        UnitRecord record = UnitFold.of(unit, site(), rules(), journal.ofUnit(unit.id(), from, now.plusSeconds(1)), List.of(), Set.of(), now);
        List<Hold> holds = new ArrayList<>(batch.holds());
        for (Deviation warm : record.deviations()) {
            boolean probed = batch.told().stream().anyMatch(told -> told.kind().equals("food-reading") && !told.at().isBefore(warm.since()) && foodWithin(told));
            boolean released = batch.entries().stream().anyMatch(entry -> Answers.released(entry, warm.id()));
            if (!probed && !released) {
                holds.add(new Hold(warm.id(), unit.name() + " was warm. Probe the food of this batch.", warm.since()));
            }
        }
        BatchRecord.Next next = holds.size() > batch.holds().size() && batch.holds().isEmpty()
                ? new BatchRecord.Next(unit.name() + " was warm. Probe the food of this batch.", "food") : batch.next();
        return new BatchRecord(batch.id(), batch.code(), batch.title(), batch.unplanned(), batch.line(), batch.trays(), batch.pieces(), batch.startedBy(),
                batch.startedAt(), batch.day(), batch.plan(), batch.life(), batch.parent(), batch.outOfOven(), batch.putAwayAt(), batch.unit(), batch.useBy(),
                batch.cook(), batch.cookReadings(), batch.cooling(), batch.runs(), batch.checks(), batch.deviations(), holds, batch.told(), batch.entries(), next);
    }

    private boolean foodWithin(trivet.batch.Told told) {
        return told.data().temperature("temperature").flatMap(t -> sites.inForceAt(told.at()).flatMap(c -> c.rulebook().range("chilled-storage"))
                .filter(limit -> limit.inForce() && !Reading.impossible(t)).map(limit -> limit.judge(t) == Verdict.WITHIN)).orElse(false);
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
        journal.ofBatches(ids).forEach((id, entries) -> fold(id, entries).ifPresent(record -> {
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
                Set<Entry> entries = new LinkedHashSet<>(journal.ofUnit(unit.id(), site.start(from), site.end(to)));
                UnitRecord bare = UnitFold.of(unit, site, rules(), List.copyOf(entries), days, closed, clock.instant());
                bare.readings().forEach(reading -> entries.addAll(journal.naming(reading.id())));
                bare.deviations().forEach(deviation -> entries.addAll(journal.naming(deviation.id())));
                units.add(UnitFold.of(unit, site, rules(), List.copyOf(entries), days, closed, clock.instant()));
            }
        }
        return units;
    }

    /** Today's business day. */
    public LocalDate today() {
        return site().dayOf(clock.instant());
    }

    /** The fields of a probe's last check and whether the probe is blocked, that is failed or not checked. */
    public boolean probeBlocked(String probe) {
        Instant now = clock.instant();
        return journal.ofKind("probe-check", now.minus(Duration.ofDays(60)), now.plusSeconds(1)).stream()
                .filter(entry -> entry.data().text("probe").map(probe::equals).orElse(false)).reduce((a, b) -> b)
                .map(entry -> !probeWithin(entry.data(), entry.claimedAt())).orElse(false);
    }

    boolean probeWithin(Fields data, Instant at) {
        String limit = "probe-" + data.text("method").orElse("");
        return data.temperature("temperature").flatMap(t -> sites.inForceAt(at).flatMap(c -> c.rulebook().range(limit))
                .filter(l -> l.inForce()).map(l -> l.judge(t) == Verdict.WITHIN)).orElse(false);
    }
}
