package trivet.tablet.web;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import trivet.batch.Told;
import trivet.check.Check;
import trivet.check.CoolingRun;
import trivet.check.Reading;
import trivet.deviation.BatchRecord;
import trivet.deviation.Daybook;
import trivet.deviation.Deviation;
import trivet.deviation.Handovers;
import trivet.deviation.ProbeTrust;
import trivet.deviation.ProgrammeRecord;
import trivet.deviation.Programmes;
import trivet.deviation.UnitRecord;
import trivet.device.Devices;
import trivet.device.Devices.Tablet;
import trivet.device.Unit;
import trivet.ledger.Heard;
import trivet.ledger.Journal;
import trivet.ledger.Register;
import trivet.limit.RangeLimit;
import trivet.limit.Rulebook;
import trivet.measure.Temperature;
import trivet.people.People;
import trivet.people.Person;
import trivet.people.Role;
import trivet.plan.ApprovedPlan;
import trivet.plan.Plan;
import trivet.plan.Plans;
import trivet.plan.Translations;
import trivet.site.Confirmed;
import trivet.site.Site;
import trivet.site.Sites;
import trivet.site.web.Caller;
import trivet.words.Words;

/** Gives a tablet what it takes along to work without a network. */
@Path("/tablet/kit.json")
@Produces(MediaType.APPLICATION_JSON)
public class KitApi {

    private static final int DAYS_AHEAD = 3;
    private static final List<String> RANGES = List.of("chilled-storage", "frozen-storage", "hot-holding", "probe-ice", "probe-boiling");

    @Inject
    Caller caller;
    @Inject
    Daybook daybook;
    @Inject
    Programmes programmes;
    @Inject
    Handovers handovers;
    @Inject
    Translations translations;
    @Inject
    Devices devices;
    @Inject
    People people;
    @Inject
    Plans plans;
    @Inject
    Sites sites;
    @Inject
    Journal journal;
    @Inject
    Heard heard;
    @Inject
    Register register;
    @Inject
    Clock clock;

    /** The kit; 304 while nothing has been recorded or changed since the tablet took its own, and the same quarter of an hour runs. */
    @GET
    public Response kit(@HeaderParam("If-None-Match") String known) {
        Instant now = clock.instant();
        String mark = "\"" + journal.lastNumber() + "-" + register.lastNumber() + "-" + now.getEpochSecond() / 900 + "-" + Words.language() + "\"";
        if (mark.equals(known)) {
            return Response.notModified().header("ETag", mark).build();
        }
        return Response.ok(kit(now)).header("ETag", mark).build();
    }

    private Kit kit(Instant now) {
        Site site = sites.current().orElseThrow();
        Optional<Confirmed> rules = sites.inForceAt(now);
        String device = caller.tablet().map(Tablet::id).orElse("");
        LocalDate today = daybook.today();
        List<UnitRecord> units = daybook.units(today, today.plusDays(DAYS_AHEAD));
        ProbeTrust doubts = daybook.probeTrust();
        List<ProgrammeRecord> ofToday = programmes.of(today);
        return new Kit(1, journal.lastNumber(), now.toEpochMilli(), device, Math.max(journal.lastSequence(device), heard.of(device).map(Heard.Word::sequence).orElse(0L)), daybook.lastCode(),
                new Kit.Place(site.name(), site.zone().getId(), site.dayEnds().toString(), site.demo()), rules.map(r -> Kit.Ref.of(r.ref())).orElse(null),
                rules.flatMap(r -> r.rulebook().cooling()).map(rule -> rule.stages().stream().map(Kit.StageNumbers::of).toList()).orElse(List.of()), ranges(rules.map(Confirmed::rulebook), range -> range),
                product(Optional.empty(), rules, today), plans.inForce(now).stream().map(plan -> product(Optional.of(plan), rules, today)).toList(), workers(site),
                devices.units().stream().filter(Unit::active).map(unit -> unit(unit, units)).toList(),
                devices.probes().stream().filter(Devices.Probe::active).map(probe -> probe(probe, doubts)).toList(),
                daybook.underway().stream().map(batch -> batch(batch, site, doubts)).toList(), units.stream().flatMap(unit -> unit.deviations().stream()).filter(Deviation::holds).map(KitApi::matter).toList(),
                ofToday.stream().flatMap(programme -> programme.check().stream()).map(KitApi::due).toList(),
                ofToday.stream().map(one -> new Kit.Programme(one.programme().id(), one.programme().title(), one.programme().what())).toList(),
                handovers.open().stream().map(one -> new Kit.Handover(one.id(), one.from(), one.to(), one.batches().size())).toList(), translations.all());
    }

    private static Map<String, Kit.Range> ranges(Optional<Rulebook> book, UnaryOperator<RangeLimit> as) {
        Map<String, Kit.Range> ranges = new LinkedHashMap<>();
        RANGES.forEach(name -> book.flatMap(b -> b.range(name)).ifPresent(range -> ranges.put(name, Kit.Range.of(as.apply(range)))));
        return ranges;
    }

    private List<Kit.Worker> workers(Site site) {
        return people.list().stream().filter(Person::active).map(person -> new Kit.Worker(person.id(), person.name(), person.initials(), person.owner(), person.roles().contains(Role.OUTSIDER),
                Kit.millis(person.lastDay().map(site::end)), person.language(), people.pin(person.id()).map(Kit.Pin::of).orElse(null), people.pinDigits(person.id()).orElse(null), people.badge(person.id()).map(Kit.Pin::of).orElse(null))).toList();
    }

    private Kit.Probe probe(Devices.Probe probe, ProbeTrust doubts) {
        Optional<Instant> due = doubts.trustedUntil(probe.id(), clock.instant());
        return new Kit.Probe(probe.id(), probe.name(), doubts.blocked(probe.id(), clock.instant()).orElse(""), Kit.millis(due), due.flatMap(at -> doubts.blocked(probe.id(), at)).orElse(""));
    }

    private static Kit.Product product(Optional<ApprovedPlan> approved, Optional<Confirmed> rules, LocalDate today) {
        Optional<Plan> plan = approved.map(ApprovedPlan::plan);
        Optional<Rulebook> book = rules.map(Confirmed::rulebook);
        Optional<String> food = plan.flatMap(p -> book.flatMap(b -> p.food(b.id())));
        int days = plan.map(Plan::useByDays).orElse(2);
        LocalDate useBy = book.flatMap(Rulebook::useBy).map(rule -> rule.lastDay(today, days)).orElse(today.plusDays(days));
        Map<String, List<String>> offers = new LinkedHashMap<>();
        for (String limit : List.of("core-cook", "cooling", "reheat", "chilled-storage", "hot-holding")) {
            offers.put(limit, plan.map(p -> p.onBreach(limit)).filter(list -> !list.isEmpty()).orElse(List.of("hold", "destroy")));
        }
        return new Kit.Product(approved.map(a -> Kit.Ref.of(a.ref())).orElse(null), plan.map(Plan::product).orElse("unplanned"), plan.map(Plan::title).orElse(""), plan.map(Plan::line).orElse("wheat"),
                book.flatMap(b -> b.alternatives("core-cook")).map(limit -> Kit.Rows.of(plan.map(p -> p.rows(limit)).orElse(limit), food)).orElse(null),
                book.flatMap(b -> b.alternatives("reheat")).map(limit -> Kit.Rows.of(limit, food)).orElse(null), plan.map(Plan::usualBakeMinutes).orElse(45), plan.map(Plan::bakeAgainMinutes).orElse(20),
                plan.map(Plan::reheatMinutes).orElse(0), plan.map(Plan::coolEveryMinutes).orElse(45), useBy.toString(), Kit.Number.of(plan.flatMap(Plan::storageAtMost)), ranges(book, range -> plan.map(p -> p.range(range)).orElse(range)),
                plan.map(p -> p.ownChecks().stream().map(own -> new Kit.Own(own.id(), own.title(), own.before(), own.what(), own.how(), own.limit())).toList()).orElse(List.of()), offers);
    }

    private static Kit.UnitDays unit(Unit unit, List<UnitRecord> records) {
        Optional<UnitRecord> record = records.stream().filter(one -> one.unit().id().equals(unit.id())).findFirst();
        return new Kit.UnitDays(unit.id(), unit.name(), unit.kind().name(), unit.kind().limit(),
                record.flatMap(UnitRecord::last).map(last -> new Kit.Last(last.temperature().toString(), last.verdict().word(), last.at().toEpochMilli())).orElse(null),
                record.map(one -> one.checks().stream().map(KitApi::due).toList()).orElse(List.of()));
    }

    private static Kit.Due due(Check check) {
        return new Kit.Due(check.id(), check.key(), check.subject(), check.label(), check.due().toEpochMilli(), check.missedAt().toEpochMilli(), check.state().word(), check.takenBy().orElse(null), check.handedTo().orElse(null), check.why());
    }

    private static Kit.Matter matter(Deviation deviation) {
        return new Kit.Matter(deviation.id(), deviation.subject(), deviation.label(), deviation.limit(), deviation.words(), deviation.limitWords(), deviation.state().word(), deviation.breach(),
                deviation.since().toEpochMilli(), deviation.offers(), deviation.answer().asMap());
    }

    private static Kit.Measured measured(Reading reading, ProbeTrust doubts) {
        return new Kit.Measured(reading.id(), reading.at().toEpochMilli(), reading.temperature().value().toPlainString(), String.valueOf(reading.temperature().scale().letter()),
                reading.held().map(BigDecimal::toPlainString).orElse(null), reading.piece().orElse(null), reading.verdict().word(), reading.words(),
                reading.told().entry().instrument().flatMap(probe -> doubts.blocked(probe, reading.at())).orElse(""));
    }

    private static Kit.Told told(Told told) {
        Optional<Temperature> value = told.data().temperature("temperature");
        return new Kit.Told(told.entry().id(), told.kind(), told.at().toEpochMilli(), told.entry().person(), value.map(t -> t.value().toPlainString()).orElse(null), value.map(t -> String.valueOf(t.scale().letter())).orElse(null),
                told.data().text("reason").orElse(""));
    }

    private static Kit.Batch batch(BatchRecord batch, Site site, ProbeTrust doubts) {
        List<CoolingRun> runs = batch.runs();
        int run = runs.isEmpty() ? 1 : runs.get(runs.size() - 1).number();
        List<Reading> cooling = new ArrayList<>();
        runs.stream().filter(one -> one.number() == run).forEach(one -> cooling.addAll(one.readings()));
        List<Told> told = batch.told();
        return new Kit.Batch(batch.id(), batch.code(), batch.title(), batch.plan().map(p -> p.plan().product()).orElse("unplanned"), batch.planNow().map(p -> Kit.Ref.of(p.ref())).orElse(null), batch.unplanned(), batch.line(),
                batch.trays(), batch.pieces(), batch.startedBy(), batch.startedAt().toEpochMilli(), batch.life().word(), batch.next().act(), batch.next().words(),
                batch.holds().stream().map(hold -> new Kit.Stop(hold.id(), hold.words(), hold.since().toEpochMilli(), hold.probeFood())).toList(), batch.useBy().map(LocalDate::toString).orElse(null),
                batch.unit().orElse(null), Kit.millis(batch.putAwayAt()), Kit.millis(batch.outOfOven()),
                Kit.millis(told.stream().filter(one -> one.kind().equals("out-of-oven")).map(Told::at).findFirst()), site.end(site.dayOf(batch.startedAt())).toEpochMilli(), batch.cook().word(),
                batch.cookReadings().stream().map(reading -> measured(reading, doubts)).toList(), told.stream().filter(one -> one.kind().equals("back-in-oven")).map(one -> one.at().toEpochMilli()).toList(), batch.cooling().word(),
                cooling.stream().map(reading -> measured(reading, doubts)).toList(), run, batch.reheatOffered(), batch.reheatRefused(), reheating(batch, doubts), batch.checks().stream().anyMatch(check -> check.sort().equals("hot")),
                Kit.millis(told.stream().filter(one -> one.kind().equals("split")).map(Told::at).findFirst()), batch.deviations().stream().filter(Deviation::holds).map(KitApi::matter).toList(), batch.checks().stream().map(KitApi::due).toList(), told.stream().map(KitApi::told).toList());
    }

    /** The reheat that is going on, if one is: begun, and not out of the oven since. */
    private static Kit.Reheating reheating(BatchRecord batch, ProbeTrust doubts) {
        Told begun = null;
        int number = 0;
        Long out = null;
        Long before = null;
        List<Long> backs = new ArrayList<>();
        List<Reading> core = new ArrayList<>();
        for (Told told : batch.told()) {
            switch (told.kind()) {
                case "reheat-begun" -> {
                    begun = told;
                    number++;
                    before = out;
                    out = null;
                    backs.clear();
                    core.clear();
                }
                case "out-of-oven" -> {
                    begun = null;
                    out = told.at().toEpochMilli();
                }
                case "back-in-oven" -> backs.add(told.at().toEpochMilli());
                case "reheat-reading" -> batch.reheatReadings().stream().filter(reading -> reading.id().equals(told.entry().id())).forEach(core::add);
                default -> { }
            }
        }
        return begun == null ? null : new Kit.Reheating(begun.entry().id(), begun.at().toEpochMilli(), number, before, core.stream().map(reading -> measured(reading, doubts)).toList(), List.copyOf(backs));
    }
}
