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
import trivet.batch.Life;
import trivet.check.Check;
import trivet.check.Minutes;
import trivet.check.Reading;
import trivet.deviation.BatchRecord;
import trivet.deviation.Day;
import trivet.deviation.Daybook;
import trivet.deviation.Deviation;
import trivet.deviation.UnitRecord;
import trivet.device.Devices;
import trivet.excursion.TimeAbove;
import trivet.ledger.Fields;
import trivet.outlook.Evidence;
import trivet.report.UnitChart;
import trivet.site.Sites;
import trivet.words.Words;

/** The day's work, what is cooling, fridges and freezers, deviations, days and the month. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class DayPages {

    private static final double LONGEST_GAP_MINUTES = 24 * 60;

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
    Screen screen;
    @Inject
    Daybook daybook;
    @Inject
    Devices devices;
    @Inject
    Sites sites;
    @Inject
    Clock clock;

    private List<Check> due(List<BatchRecord> underway) {
        LocalDate today = daybook.today();
        Stream<Check> ofBatches = underway.stream().filter(batch -> !batch.life().over()).flatMap(batch -> batch.checks().stream());
        Stream<Check> ofUnits = daybook.units(today, today).stream().flatMap(unit -> unit.checks().stream());
        return Stream.concat(ofBatches, ofUnits).filter(check -> check.state().open() || check.state() == Check.State.NOT_YET_DUE)
                .sorted(Comparator.comparing(Check::due)).toList();
    }

    @GET
    @Path("work")
    public TemplateInstance work() {
        List<BatchRecord> underway = daybook.underway();
        List<Check> due = due(underway);
        return screen.of(work).data("now", due.stream().filter(check -> check.state().open()).toList())
                .data("next", due.stream().filter(check -> !check.state().open()).limit(8).toList())
                .data("held", underway.stream().filter(BatchRecord::held).toList())
                .data("batches", underway.stream().filter(batch -> !batch.life().over() && batch.life() != Life.STORED).toList());
    }

    @GET
    @Path("work/due.json")
    @Produces(MediaType.APPLICATION_JSON)
    public Map<String, Object> dueNow() {
        List<Check> due = due(daybook.underway());
        return Map.of("past", due.stream().filter(check -> check.state() == Check.State.PAST_DUE).count(),
                "due", due.stream().filter(check -> check.state().open()).map(check -> Map.of("check", check.id(), "label", check.label(), "key", check.key(),
                        "due", check.due().toString())).toList());
    }

    @GET
    @Path("cooling")
    public TemplateInstance cooling() {
        return screen.of(cooling).data("batches", daybook.underway().stream().filter(batch -> batch.life() == Life.COOLING).toList());
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
        UnitRecord weekOf = daybook.units(today.minusDays(6), today).stream().filter(record -> record.unit().id().equals(id)).findFirst().orElse(shown);
        return screen.of(unit).data("chart", new RawString(UnitChart.svg(weekOf))).data("above", above(weekOf)).data("record", shown).data("waitingIds", String.join(" ", shown.waiting().stream().map(entry -> entry.id()).toList())).data("following", next < all.size() ? "/units/" + all.get(next).unit().id() : "/units")
                .data("batches", daybook.underway().stream().filter(batch -> batch.unit().map(id::equals).orElse(false) && batch.life() == Life.STORED).toList());
    }

    /** Minutes above the limit in force over the readings, gaps of more than a day unknown; empty text without a limit. */
    private String above(UnitRecord record) {
        Optional<Double> limit = sites.inForceAt(clock.instant()).flatMap(c -> c.rulebook().range(record.unit().kind().limit())).flatMap(range -> range.maximum()).map(max -> max.celsius().inCelsius().doubleValue());
        List<Reading> readings = record.readings().stream().filter(r -> !Reading.impossible(r.temperature())).toList();
        if (limit.isEmpty() || readings.size() < 2) {
            return "";
        }
        double[] minutes = readings.stream().mapToDouble(r -> Minutes.between(readings.get(0).at(), r.at()).doubleValue()).toArray();
        double[] celsius = readings.stream().mapToDouble(r -> r.temperature().inCelsius().doubleValue()).toArray();
        TimeAbove above = TimeAbove.of(limit.get(), LONGEST_GAP_MINUTES, minutes, celsius);
        return Words.say("j_unit_above", Math.round(above.minutesAbove()), Math.round(above.unknownMinutes()));
    }

    @GET
    @Path("probes")
    public TemplateInstance probes() {
        return screen.of(probes).data("probes", devices.probes().stream().map(probe -> Map.of("id", probe.id(), "name", probe.name(),
                "blocked", daybook.probeBlocked(probe.id()).orElse(""),
                "checks", daybook.probeChecks(probe.id()).stream().limit(8).toList(), "touched", daybook.touchedBy(probe.id()))).toList());
    }

    private List<Deviation> open() {
        LocalDate today = daybook.today();
        List<Deviation> all = new ArrayList<>();
        daybook.underway().forEach(batch -> all.addAll(batch.deviations()));
        daybook.units(today.minusDays(14), today).forEach(unit -> all.addAll(unit.deviations()));
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
