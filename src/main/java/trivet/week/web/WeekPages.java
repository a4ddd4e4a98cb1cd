package trivet.week.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import trivet.alarm.Tally;
import trivet.week.Week;

/** The owner's weekly look; staff never see it. */
@Path("/owner/week")
@Produces(MediaType.TEXT_HTML)
public class WeekPages {

    @Inject
    @Location("site/week.html")
    Template page;
    @Inject
    Week week;
    @Inject
    Tally tally;

    /** A sign as the page shows it. */
    public record Shown(String where, String words, String chance) {
    }

    @GET
    public TemplateInstance look() {
        List<Shown> signs = week.signs().stream().map(sign -> new Shown(sign.where(), sign.words(), Double.isNaN(sign.probability()) ? "–" : String.format(java.util.Locale.ROOT, "%.1e", sign.probability()))).toList();
        return page.data("signs", signs).data("count", tally.count());
    }
}
