package trivet.tablet.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import trivet.batch.Dispute;
import trivet.batch.Life;
import trivet.batch.Told;
import trivet.check.Check;
import trivet.deviation.BatchRecord;
import trivet.deviation.Day;
import trivet.alarm.Alarms;
import trivet.deviation.Daybook;
import trivet.deviation.DueChecks;
import trivet.deviation.Handovers;
import trivet.deviation.Deviation;
import trivet.deviation.Programmes;
import trivet.deviation.UnitRecord;
import trivet.device.Devices;
import trivet.ledger.Fields;
import trivet.outlook.Evidence;
import trivet.outlook.Outlook;
import trivet.outlook.Outlooks;
import trivet.outlook.UnitHabits;
import trivet.report.UnitChart;
import trivet.site.Sites;
import trivet.words.Words;

/** The day's work, what is cooling, fridges and freezers, deviations, days and the month. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class DayPages {

    @Inject
    @Location("tablet/work.html")
    Template work;
    @Inject
    @Location("tablet/cooling.html")
    Template cooling;
    @Inject
    @Location("tablet/units.html")
    Template units;
    @Inject
    @Location("tablet/unit.html")
    Template unit;
    @Inject
    @Location("tablet/deviations.html")
    Template deviations;
    @Inject
    @Location("tablet/deviation.html")
    Template deviation;
    @Inject
    @Location("tablet/month.html")
    Template month;
    @Inject
    @Location("tablet/day.html")
    Template day;
    @Inject
    @Location("tablet/probes.html")
    Template probes;
    @Inject
    @Location("tablet/probe.html")
    Template probe;
    @Inject
    @Location("tablet/shift-end.html")
    Template shiftEnd;
    @Inject
    Screen screen;
    @Inject
    Daybook daybook;
    @Inject
    Programmes programmes;
    @Inject
    DueChecks checks;
    @Inject
    Handovers handovers;
    @Inject
    Alarms alarms;
    @Inject
    Outlooks outlooks;
    @Inject
    Devices devices;
    @Inject
    Sites sites;
    @Inject
    Clock clock;


    @GET
    @Path("work")
    public TemplateInstance work() {
        List<BatchRecord> underway = daybook.underway();
        List<Check> due = checks.list(underway);
        return screen.of(work).data("now", due.stream().filter(check -> check.state().open()).toList())
                .data("next", due.stream().filter(check -> !check.state().open()).limit(8).toList())
                .data("alarms", alarms.open()).data("handovers", handovers.open())
                .data("held", underway.stream().filter(BatchRecord::held).toList())
                .data("batches", underway.stream().filter(batch -> !batch.life().over() && batch.life() != Life.STORED).toList());
    }

    /** The end of a shift: what is under way, and to whom it goes. */
    @GET
    @Path("shift-end")
    public TemplateInstance shiftEnd() {
        List<BatchRecord> left = daybook.underway().stream().filter(batch -> !batch.life().over() && batch.life() != Life.STORED).toList();
        return screen.of(shiftEnd).data("batches", left).data("ids", left.stream().map(BatchRecord::id).collect(java.util.stream.Collectors.joining(" ")))
                .data("people", screen.people().stream().filter(one -> !one.id().equals(screen.personId())).toList());
    }

    @GET
    @Path("due.json")
    @Produces(MediaType.APPLICATION_JSON)
    public Map<String, Object> dueNow() {
        List<Check> due = checks.list(daybook.underway());
        return Map.of("past", due.stream().filter(check -> check.state() == Check.State.PAST_DUE).count(),
                "due", due.stream().filter(check -> check.state().open()).map(check -> Map.of("check", check.id(), "label", check.label(), "key", check.key(),
                        "due", check.due().toString())).toList());
    }

    @GET
    @Path("cooling")
    public TemplateInstance cooling() {
        List<Map<String, Object>> shown = daybook.underway().stream().filter(batch -> batch.life() == Life.COOLING).map(batch -> {
            List<Outlook> outlook = outlooks.of(batch);
            return Map.<String, Object>of("batch", batch, "outlook", outlook.isEmpty() ? "" : outlook.get(outlook.size() - 1).words());
        }).toList();
        return screen.of(cooling).data("batches", shown);
    }

    @GET
    @Path("units")
    public TemplateInstance units() {
        LocalDate today = daybook.today();
        return screen.of(units).data("units", daybook.units(today, today)).data("today", today);
    }

    @GET
    @Path("units/{id}")
    public TemplateInstance unit(@PathParam("id") String id) {
        LocalDate today = daybook.today();
        List<UnitRecord> all = daybook.units(today, today);
        UnitRecord shown = all.stream().filter(record -> record.unit().id().equals(id)).findFirst().orElseThrow(NotFoundException::new);
        int next = all.indexOf(shown) + 1;
        UnitRecord week = over(id, 6).orElse(shown);
        Optional<UnitHabits> habits = UnitHabits.of(over(id, 29).orElse(shown), week, sites.inForceAt(clock.instant()).flatMap(c -> c.rulebook().range(shown.unit().kind().limit())));
        return screen.of(unit).data("chart", new RawString(UnitChart.svg(week))).data("habits", habits.orElse(null)).data("week", week.readings()).data("record", shown).data("waitingIds", String.join(" ", Dispute.acceptable(shown.waiting(), shown.disputes()))).data("following", next < all.size() ? "/units/" + all.get(next).unit().id() : "/units")
                .data("batches", daybook.underway().stream().filter(batch -> batch.unit().map(id::equals).orElse(false) && batch.life() == Life.STORED).toList());
    }

    private Optional<UnitRecord> over(String id, int daysBack) {
        return daybook.units(daybook.today().minusDays(daysBack), daybook.today()).stream().filter(record -> record.unit().id().equals(id)).findFirst();
    }

    @GET
    @Path("probes")
    public TemplateInstance probes() {
        return screen.of(probes).data("probes", devices.probes().stream().map(one -> Map.of("id", one.id(), "name", one.name(), "blocked", daybook.probeBlocked(one.id()).orElse(""),
                "checks", daybook.probeChecks(one.id()))).toList());
    }

    @GET
    @Path("probes/{id}")
    public TemplateInstance probe(@PathParam("id") String id) {
        Devices.Probe shown = devices.probes().stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow(NotFoundException::new);
        return screen.of(probe).data("probe", shown).data("blocked", daybook.probeBlocked(id).orElse("")).data("touched", daybook.touchedBy(id)).data("ice", limit("probe-ice"))
                .data("boiling", limit("probe-boiling")).data("checks", daybook.probeChecks(id).stream().limit(12).map(told -> Map.of("told", told, "result", result(told))).toList()).data("altitude", lastAltitude());
    }

    private String result(Told check) {
        return daybook.probeResult(check).map(r -> Words.say("j_probe_result", Words.named("outcome", r.conformance().outcome().name()), String.format(java.util.Locale.ROOT, "%+.1f", r.error()),
                String.format(java.util.Locale.ROOT, "%.1f", 100 * r.conformance().probability()))).orElse("");
    }

    /** The height above the sea that was typed at the latest boiling check of any probe; empty text for none. */
    private String lastAltitude() {
        return devices.probes().stream().flatMap(one -> daybook.probeChecks(one.id()).stream()).filter(told -> told.data().decimal("altitude_m").isPresent()).max(Comparator.comparing(Told::at))
                .map(told -> told.data().decimal("altitude_m").get().toPlainString()).orElse("");
    }

    private String limit(String id) {
        return sites.inForceAt(clock.instant()).flatMap(c -> c.rulebook().range(id)).map(range -> range.words()).orElse("–");
    }

    private List<Deviation> open() {
        LocalDate today = daybook.today();
        List<Deviation> all = new ArrayList<>();
        daybook.underway().forEach(batch -> all.addAll(batch.deviations()));
        daybook.units(today.minusDays(14), today).forEach(unit -> all.addAll(unit.deviations()));
        programmes.of(today).forEach(programme -> all.addAll(programme.deviations()));
        return all.stream().sorted(Comparator.comparing(Deviation::state).thenComparing(Deviation::since, Comparator.reverseOrder())).toList();
    }

    @GET
    @Path("deviations")
    public TemplateInstance deviations() {
        return screen.of(deviations).data("deviations", open().stream().filter(Deviation::holds).toList());
    }

    @GET
    @Path("deviations/{id}")
    public TemplateInstance deviation(@PathParam("id") String id) {
        Deviation found = open().stream().filter(d -> d.id().equals(id)).findFirst().orElseThrow(NotFoundException::new);
        Optional<BatchRecord> batch = daybook.batch(found.subject());
        var food = found.answer().object("food").orElse(Fields.NONE);
        Map<String, String> affected = Map.of("trays", food.text("trays").or(() -> batch.map(b -> String.valueOf(b.trays()))).orElse(""),
                "pieces", food.text("pieces").or(() -> batch.map(b -> String.valueOf(b.pieces()))).orElse(""), "kg", food.text("kg").orElse(""));
        return screen.of(deviation).data("evidence", found.limit().equals("cooling") ? batch.map(Evidence::of).orElse(List.of()) : List.of()).data("d", found).data("ofBatch", batch.isPresent()).data("today", daybook.today()).data("food", affected)
                .data("dispositions", Disposition.offered(found, batch)).data("reheatRefused", batch.filter(b -> found.limit().equals("cooling")).map(BatchRecord::reheatRefused).orElse(""))
                .data("readings", batch.map(b -> b.told().stream().filter(t -> t.data().temperature("temperature").isPresent()).toList()).orElse(List.of()));
    }

    @GET
    @Path("month")
    public TemplateInstance month() {
        LocalDate today = daybook.today();
        YearMonth now = YearMonth.from(today);
        return screen.of(month).data("days", daybook.days(now.atDay(1), today)).data("month", now).data("before", now.minusMonths(1));
    }

    @GET
    @Path("days/{date}")
    public TemplateInstance day(@PathParam("date") String date) {
        try {
            LocalDate asked = LocalDate.parse(date);
            Day shown = daybook.days(asked, asked).get(0);
            return screen.of(day).data("day", shown).data("units", daybook.units(asked, asked));
        } catch (java.time.DateTimeException unreadable) {
            throw new NotFoundException();
        }
    }
}
