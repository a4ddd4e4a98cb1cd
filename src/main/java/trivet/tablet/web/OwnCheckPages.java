package trivet.tablet.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.Optional;
import trivet.check.Check;
import trivet.deviation.BatchRecord;
import trivet.deviation.Daybook;
import trivet.plan.Plan;

/** Looking at what a plan wants looked at beside temperatures: a control by its own criterion. */
@Path("/batches/{id}/own/{item}")
@Produces(MediaType.TEXT_HTML)
public class OwnCheckPages {

    @Inject
    @Location("tablet/own.html")
    Template page;
    @Inject
    Screen screen;
    @Inject
    Daybook daybook;

    @GET
    public TemplateInstance batch(@PathParam("id") String id, @PathParam("item") String item) {
        BatchRecord batch = daybook.batch(id).orElseThrow(NotFoundException::new);
        Plan.OwnCheck own = batch.plan().stream().flatMap(plan -> plan.plan().ownChecks().stream()).filter(one -> one.id().equals(item)).findFirst().orElseThrow(NotFoundException::new);
        Optional<Check> check = batch.checks().stream().filter(one -> one.key().startsWith(Check.OWN) && one.item().equals(item)).findFirst();
        return screen.of(page).data("kind", "plan-check").data("batch", batch).data("item", item).data("heading", batch.code() + " · " + screen.text(own.title())).data("what", screen.text(own.what())).data("how", screen.text(own.how())).data("limit", screen.text(own.limit())).data("corrective", screen.text(own.corrective()))
                .data("check", check.map(Check::id).orElse("")).data("back", "/batches/" + id);
    }
}
