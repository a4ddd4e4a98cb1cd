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
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import trivet.batch.Life;
import trivet.chart.IndividualsChart;
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
import trivet.outlook.Outlook;
import trivet.outlook.Outlooks;
import trivet.report.UnitChart;
import trivet.site.Sites;
import trivet.words.Words;

/** The day's work, what is cooling, fridges and freezers, deviations, days and the month. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class DayPages {

    private static final double LONGEST_GAP_MINUTES = 24 * 60;
    private static final int LEAST_FOR_A_CHART = 20;

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
    Screen screen;
    @Inject
    Daybook daybook;
    @Inject
    Outlooks outlooks;
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
        UnitRecord weekOf = daybook.units(today.minusDays(6), today).stream().filter(record -> record.unit().id().equals(id)).findFirst().orElse(shown);
        return screen.of(unit).data("chart", new RawString(UnitChart.svg(weekOf))).data("above", above(weekOf)).data("process", process(daybook.units(today.minusDays(29), today).stream().filter(record -> record.unit().id().equals(id)).findFirst().orElse(shown))).data("record", shown).data("waitingIds", String.join(" ", shown.waiting().stream().map(entry -> entry.id()).toList())).data("following", next < all.size() ? "/units/" + all.get(next).unit().id() : "/units")
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

    /** The control limits of a unit's last 30 days and the points that signal a change; empty text with fewer than 20 readings. */
    private String process(UnitRecord record) {
        List<Reading> readings = record.readings().stream().filter(r -> !Reading.impossible(r.temperature())).toList();
        if (readings.size() < LEAST_FOR_A_CHART) {
            return "";
        }
        double[] values = readings.stream().mapToDouble(r -> r.temperature().inCelsius().doubleValue()).toArray();
        Set<Integer> breaks = IntStream.range(1, values.length).filter(i -> Minutes.between(readings.get(i - 1).at(), readings.get(i).at()).doubleValue() > LONGEST_GAP_MINUTES).boxed().collect(Collectors.toSet());
        IndividualsChart chart = IndividualsChart.of(values, IndividualsChart.D2, Set.copyOf(IndividualsChart.USUAL), breaks);
        String signals = String.join(", ", chart.signals().stream().map(signal -> screen.moment(readings.get(signal.index() - 1).at())).distinct().toList());
        return Words.say("j_unit_process", one(chart.lower()), one(chart.upper()), signals.isEmpty() ? "–" : signals);
    }

    private static String one(double value) {
        return String.format(java.util.Locale.ROOT, "%.1f", value);
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
                .data("boiling", limit("probe-boiling")).data("checks", daybook.probeChecks(id).stream().limit(12).toList());
    }

    private String limit(String id) {
        return sites.inForceAt(clock.instant()).flatMap(c -> c.rulebook().range(id)).map(range -> range.words()).orElse("–");
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
