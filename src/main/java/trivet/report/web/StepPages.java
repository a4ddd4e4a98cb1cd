package trivet.report.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import java.time.Duration;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import trivet.deviation.Daybook;
import trivet.outlook.StepHabits;
import trivet.report.HabitChart;
import trivet.site.Sites;
import trivet.words.Words;

/** What each product's core and cooling do from batch to batch over the last ninety days. */
@Path("/steps")
@Produces(MediaType.TEXT_HTML)
public class StepPages {

    private static final Duration BACK = Duration.ofDays(90);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM");

    @Inject
    @Location("report/steps.html")
    Template page;
    @Inject
    Daybook daybook;
    @Inject
    Sites sites;
    @Inject
    Clock clock;

    /** A history as the page shows it. */
    public record Shown(String heading, String limits, List<Row> rows, RawString picture) {
    }

    /** A batch of a history. */
    public record Row(String batch, String code, String day, String value, boolean changed) {
    }

    @GET
    public TemplateInstance steps() {
        var now = clock.instant();
        return page.data("histories", StepHabits.of(daybook.begun(now.minus(BACK), now)).stream().map(this::shown).toList());
    }

    private Shown shown(StepHabits habits) {
        String unit = habits.step().equals("core") ? "°C" : "min";
        List<Row> rows = habits.points().stream().map(point -> new Row(point.batch(), point.code(), DAY.withLocale(Words.locale()).format(point.at().atZone(sites.current().orElseThrow().zone())),
                number(point.value()) + " " + unit, habits.changed().contains(point))).toList();
        String heading = habits.step().equals("core") ? Words.say("j_history_of_the_core", habits.title(), habits.version(), habits.probe())
                : Words.say("j_history_of_the_cooling", habits.title(), habits.version(), habits.probe());
        return new Shown(heading, Words.say("j_history_limits", number(habits.chart().lower()), number(habits.chart().upper()), unit, habits.changed().size()), rows, new RawString(HabitChart.svg(habits)));
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
