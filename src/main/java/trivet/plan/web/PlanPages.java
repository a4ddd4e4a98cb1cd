package trivet.plan.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import trivet.people.Person;
import trivet.plan.Plans;
import trivet.site.web.Caller;

/** The owner's page of plans: what each says, what is wrong with a file, and approving one. */
@Path("/owner/plans")
@Produces(MediaType.TEXT_HTML)
public class PlanPages {

    @Inject
    @Location("plan/plans.html")
    Template page;
    @Inject
    Plans plans;
    @Inject
    Caller caller;
    @Inject
    Clock clock;

    @GET
    public TemplateInstance plans() {
        return page.data("drafts", plans.drafts()).data("problem", null);
    }

    @POST
    public Response approve(@FormParam("product") String product) {
        try {
            plans.approve(product, caller.person().map(Person::id).orElseThrow(), clock.instant(), "");
            return Response.seeOther(URI.create("/owner/plans")).build();
        } catch (IllegalArgumentException refused) {
            return Response.status(422).entity(page.data("drafts", plans.drafts()).data("problem", refused.getMessage()).render()).build();
        }
    }
}
