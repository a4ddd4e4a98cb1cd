package trivet.report.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
import io.quarkus.qute.Template;
import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import trivet.knowledge.Knowledge;
import trivet.people.People;
import trivet.plan.ApprovedPlan;
import trivet.plan.Drafts;
import trivet.plan.Plans;
import trivet.plan.web.Editing;
import trivet.plan.web.PlanDrawings;
import trivet.report.PlanPaper;
import trivet.site.Sites;
import trivet.study.Study;
import trivet.words.Words;

/** A hazard plan as PDF, as its file, and its worksheets as CSV. */
@Path("/owner/plans")
public class PlanReports {

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM yyyy HH:mm", Locale.ROOT);

    @Inject
    @Location("report/plan.xml")
    Template paper;
    @Inject
    Press press;
    @Inject
    Editing editing;
    @Inject
    Plans plans;
    @Inject
    Sites sites;
    @Inject
    People people;
    @Inject
    Clock clock;

    @GET
    @Path("{product}.pdf")
    @Produces("application/pdf")
    public byte[] pdf(@PathParam("product") String product, @QueryParam("paper") @DefaultValue("a4") String size) {
        Drafts.Text text = editing.text(product);
        Study study = editing.study(text);
        Knowledge known = editing.knowledge();
        List<ApprovedPlan> history = plans.history(product);
        boolean approved = !history.isEmpty() && history.get(history.size() - 1).ref().sha256().equals(text.sha256());
        List<List<String>> versions = history.stream().map(plan -> List.of(String.valueOf(plan.ref().version()), people.name(plan.by()) + ", " + moment(plan.signedAt()), plan.meaning() + " (" + moment(plan.from()) + ")", plan.ref().sha256())).toList();
        var open = editing.open(study);
        return press.pdf(paper.data("chapters", PlanPaper.of(study, known, editing.rulebook(), open, versions)).data("heading", PlanPaper.heading(study, approved)).data("sha256", text.sha256()).data("letter", size.equals("letter"))
                .data("flow", new RawString(PlanDrawings.flow(study, known))).data("rooms", new RawString(PlanDrawings.rooms(study))).data("site", sites.current().map(site -> site.name() + ", " + site.address()).orElse(""))
                .data("printed", moment(clock.instant())).data("rulebook", sites.inForceAt(clock.instant()).map(confirmed -> confirmed.rulebook().title() + " " + confirmed.ref().version()).orElse("–")).render());
    }

    private String moment(java.time.Instant at) {
        return MOMENT.withLocale(Words.locale()).format(at.atZone(sites.current().map(site -> site.zone()).orElse(java.time.ZoneOffset.UTC)));
    }

    @GET
    @Path("{product}.yaml")
    public Response yaml(@PathParam("product") String product) {
        return Response.ok(editing.text(product).text()).type("application/yaml;charset=UTF-8").header("Content-Disposition", "attachment; filename=\"" + product + ".yaml\"").build();
    }

    @GET
    @Path("{product}/worksheet.csv")
    public Response worksheet(@PathParam("product") String product) {
        Study study = editing.study(editing.text(product));
        return csv(product + "-worksheet", PlanPaper.controlHead(), PlanPaper.controls(study, editing.knowledge(), editing.rulebook()));
    }

    @GET
    @Path("{product}/analysis.csv")
    public Response analysis(@PathParam("product") String product) {
        Study study = editing.study(editing.text(product));
        return csv(product + "-analysis", PlanPaper.hazardHead(), PlanPaper.hazards(study, editing.knowledge()));
    }

    private static Response csv(String name, List<String> head, List<List<String>> rows) {
        return Response.ok(CsvSheet.of(head, rows.stream())).type("text/csv;charset=UTF-8").header("Content-Disposition", "attachment; filename=\"" + name + ".csv\"").build();
    }
}
