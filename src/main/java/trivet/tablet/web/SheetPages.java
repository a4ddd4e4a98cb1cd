package trivet.tablet.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import trivet.deviation.Daybook;
import trivet.device.Devices;
import trivet.device.Unit;
import trivet.limit.AlternativesLimit;
import trivet.limit.Rulebook;
import trivet.plan.ApprovedPlan;
import trivet.plan.Plan;
import trivet.plan.Plans;
import trivet.site.Confirmed;
import trivet.site.Sites;
import trivet.words.Words;

/** Blank sheets for a power cut, printed from the approved plan, and typing a filled-in one in. */
@Path("/sheets")
@Produces(MediaType.TEXT_HTML)
public class SheetPages {

    private static final DateTimeFormatter NUMBER = DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss");
    @Inject
    @Location("tablet/sheets.html")
    Template list;
    @Inject
    @Location("tablet/sheet.html")
    Template blank;
    @Inject
    @Location("tablet/enter.html")
    Template enter;
    @Inject
    Screen screen;
    @Inject
    Plans plans;
    @Inject
    Sites sites;
    @Inject
    Devices devices;
    @Inject
    Daybook daybook;
    @Inject
    Clock clock;

    @GET
    public TemplateInstance list() {
        return screen.of(list).data("plans", plans.inForce(clock.instant()));
    }

    private ApprovedPlan plan(String product) {
        return plans.inForce(clock.instant()).stream().filter(plan -> plan.plan().product().equals(product)).findFirst().orElseThrow(NotFoundException::new);
    }

    /** A blank sheet; its number is its own, so that a filled-in one can be found again. */
    @GET
    @Path("{product}")
    public TemplateInstance blank(@PathParam("product") String product) {
        ApprovedPlan plan = plan(product);
        Optional<Rulebook> rules = sites.inForceAt(clock.instant()).map(Confirmed::rulebook);
        Optional<String> food = rules.flatMap(r -> plan.plan().food(r.id()));
        String core = rules.flatMap(r -> r.alternatives("core-cook")).map(limit -> limit.rowsFor(food).stream().map(AlternativesLimit.Row::words).toList())
                .map(rows -> String.join(", or ", rows)).orElse(Words.say("j_none_confirmed"));
        String cooling = rules.flatMap(Rulebook::cooling).map(limit -> String.join("; ", limit.stages().stream().map(stage -> stage.words()).toList())).orElse(Words.say("j_none_confirmed"));
        String storage = plan.plan().storageAtMost().map(bound -> bound.words()).or(() -> rules.flatMap(r -> r.range("chilled-storage")).map(limit -> limit.words())).orElse(Words.say("j_none_confirmed"));
        return screen.of(blank).data("plan", plan).data("site", sites.current().orElseThrow()).data("number", "S-" + NUMBER.format(clock.instant().atZone(sites.current().orElseThrow().zone())))
                .data("rulebook", rules.map(Rulebook::title).orElse(Words.say("j_no_confirmed_rulebook"))).data("core", core).data("cooling", cooling).data("storage", storage)
                .data("coreWhat", what(plan.plan(), "core")).data("coolWhat", what(plan.plan(), "cool")).data("breach", String.join("; ", plan.plan().controlPoints().stream()
                        .map(point -> point.limit() + ": " + String.join(Words.say("j_or") + " ", point.onBreach())).toList()));
    }

    private static String what(Plan plan, String check) {
        return plan.checks().stream().filter(spec -> spec.key().equals(check)).findFirst().map(Plan.CheckSpec::what).orElse(check);
    }

    /** The page on which a filled-in sheet is typed in. */
    @GET
    @Path("{product}/enter")
    public TemplateInstance enter(@PathParam("product") String product, @QueryParam("sheet") @DefaultValue("") String sheet) {
        ApprovedPlan plan = plan(product);
        LocalDate today = daybook.today();
        LocalDate useBy = sites.inForceAt(clock.instant()).flatMap(c -> c.rulebook().useBy()).map(rule -> rule.lastDay(today, plan.plan().useByDays()))
                .orElse(today.plusDays(plan.plan().useByDays()));
        return screen.of(enter).data("plan", plan).data("sheet", sheet).data("today", today).data("useBy", useBy).data("dayEnds", sites.current().orElseThrow().dayEnds())
                .data("ovens", devices.inUse(Unit.Kind.OVEN)).data("fridges", devices.inUse(Unit.Kind.FRIDGE, Unit.Kind.FREEZER))
                .data("probes", devices.probes().stream().filter(Devices.Probe::active).toList()).data("lastCode", daybook.lastCode());
    }
}
