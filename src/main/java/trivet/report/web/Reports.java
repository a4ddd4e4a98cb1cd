package trivet.report.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import trivet.check.CoolingRun;
import trivet.deviation.Daybook;
import trivet.deviation.Programmes;
import trivet.device.Devices;
import trivet.limit.Limit;
import trivet.limit.LimitNumbers;
import trivet.measure.web.ProblemException;
import trivet.people.People;
import trivet.people.Person;
import trivet.report.Curve;
import trivet.report.MonthReport;
import trivet.report.UnitChart;
import trivet.site.Site;
import trivet.site.Sites;
import trivet.site.web.Caller;
import trivet.words.Words;

/** The records of a month, or of any range of days, for an inspector. */
@Path("/reports")
public class Reports {

    private static final int MOST_DAYS = 400;

    @Inject
    @Location("report/month.html")
    Template page;
    @Inject
    @Location("report/paper.xml")
    Template paper;
    @Inject
    Daybook daybook;
    @Inject
    Programmes programmes;
    @Inject
    Sites sites;
    @Inject
    People people;
    @Inject
    Devices devices;
    @Inject
    Caller caller;
    @Inject
    Clock clock;
    @Inject
    Press press;

    @GET
    @Path("month/{month: \\d{4}-\\d{2}}")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance month(@PathParam("month") String month) {
        return shown(page, report(month(month, true), month(month, false)));
    }

    @GET
    @Path("month/{month: \\d{4}-\\d{2}}.pdf")
    @Produces("application/pdf")
    public byte[] monthPdf(@PathParam("month") String month) {
        return press.pdf(shown(paper, report(month(month, true), month(month, false))).render());
    }

    @GET
    @Path("month/{month: \\d{4}-\\d{2}}.csv")
    @Produces("text/csv;charset=UTF-8")
    public String monthCsv(@PathParam("month") String month) {
        return CsvSheet.of(report(month(month, true), month(month, false)), people);
    }

    @GET
    @Path("range")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance range(@QueryParam("from") @DefaultValue("") String from, @QueryParam("to") @DefaultValue("") String to) {
        return shown(page, report(date(from, "from"), date(to, "to")));
    }

    @GET
    @Path("range.pdf")
    @Produces("application/pdf")
    public byte[] rangePdf(@QueryParam("from") @DefaultValue("") String from, @QueryParam("to") @DefaultValue("") String to) {
        return press.pdf(shown(paper, report(date(from, "from"), date(to, "to"))).render());
    }

    @GET
    @Path("range.csv")
    @Produces("text/csv;charset=UTF-8")
    public String rangeCsv(@QueryParam("from") @DefaultValue("") String from, @QueryParam("to") @DefaultValue("") String to) {
        return CsvSheet.of(report(date(from, "from"), date(to, "to")), people);
    }

    private static LocalDate month(String text, boolean first) {
        try {
            YearMonth month = YearMonth.parse(text);
            return first ? month.atDay(1) : month.atEndOfMonth();
        } catch (DateTimeException unreadable) {
            throw new ProblemException(404, "month", "There is no month " + text + ".");
        }
    }

    private static LocalDate date(String text, String field) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException unreadable) {
            throw new ProblemException(400, field, "Give " + field + " as a date such as 2026-10-01.");
        }
    }

    private MonthReport report(LocalDate from, LocalDate to) {
        if (to.isBefore(from) || from.plusDays(MOST_DAYS).isBefore(to)) {
            throw new ProblemException(400, "to", "Give a range of 1 to " + MOST_DAYS + " days, the first one first.");
        }
        Site site = sites.current().orElseThrow(() -> new ProblemException(404, "", "No bakery is set up yet."));
        LocalDate end = to.isAfter(daybook.today()) ? daybook.today() : to;
        LocalDate last = end.isBefore(from) ? from : end;
        String by = caller.person().map(Person::name).orElse("a signed-in person");
        return MonthReport.of(site, from, to, clock.instant(), by, sites.inForceBetween(site.start(from), site.end(to)), daybook.days(from, last), daybook.units(from, last), programmes.over(from, last));
    }

    private TemplateInstance shown(Template template, MonthReport report) {
        return template.data("r", report).data("show", new Show(report.site(), people, devices));
    }

    /** How moments, people, limits and pictures are shown in a report. */
    public static final class Show {

        private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM HH:mm");
        private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm xxx");
        private final Site site;
        private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm");
        private final People people;
        private final Devices devices;

        Show(Site site, People people, Devices devices) {
            this.site = site;
            this.people = people;
            this.devices = devices;
        }

        /** The day and time at the site. */
        public String moment(Instant at) {
            return MOMENT.withLocale(Words.locale()).format(at.atZone(site.zone()));
        }

        /** The time alone on the day itself, else with its day. */
        public String clock(Instant at, LocalDate day) {
            return at.atZone(site.zone()).toLocalDate().equals(day) ? TIME.format(at.atZone(site.zone())) : moment(at);
        }

        /** The name of a unit. */
        public String unit(String id) {
            return devices.unit(id).map(trivet.device.Unit::name).orElse(id);
        }

        /** The full date and time with the offset. */
        public String stamp(Instant at) {
            return STAMP.format(at.atZone(site.zone()));
        }

        /** A kind of record in words. */
        public String kind(String kind) {
            return Words.named("kind", kind);
        }

        /** Initials of a person. */
        public String initials(String person) {
            return people.initials(person);
        }

        /** Name of a person. */
        public String name(String person) {
            return people.name(person);
        }

        /** Every number of a limit. */
        public List<LimitNumbers.LimitNumber> numbers(Limit limit) {
            return LimitNumbers.of(limit);
        }

        /** The picture of a run of cooling. */
        public RawString curve(CoolingRun run) {
            return new RawString(Curve.svg(run, site.zone()));
        }

        /** The small picture of a unit's readings. */
        public RawString chart(trivet.deviation.UnitRecord unit) {
            return new RawString(UnitChart.svg(unit));
        }
    }
}
