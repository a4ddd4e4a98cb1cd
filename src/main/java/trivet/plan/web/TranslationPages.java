package trivet.plan.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import trivet.plan.ApprovedPlan;
import trivet.plan.Plan;
import trivet.plan.Plans;
import trivet.plan.Translations;
import trivet.words.Words;

/** Where an owner puts what is read of a plan at work into other languages. */
@Path("/owner/plans/{product}/words")
@Produces(MediaType.TEXT_HTML)
public class TranslationPages {

    @Inject
    @Location("plan/words.html")
    Template page;
    @Inject
    Translations translations;
    @Inject
    Plans plans;
    @Inject
    Editing editing;

    /** The plan that people work by: the approved one, or the draft while none is. */
    private Optional<Plan> plan(String product) {
        Optional<Plan> approved = plans.approved().stream().filter(one -> one.ref().id().equals(product)).map(ApprovedPlan::plan).findFirst();
        return approved.or(() -> plans.drafts().stream().filter(draft -> draft.product().equals(product)).findFirst().flatMap(Plans.Draft::plan));
    }

    @GET
    public TemplateInstance show(@PathParam("product") String product, @QueryParam("language") @DefaultValue("") String language) {
        return page(product, language, null);
    }

    private TemplateInstance page(String product, String language, String problem) {
        String chosen = Words.languages().containsKey(language) ? language : "";
        return page.data("product", product).data("heading", editing.study(editing.text(product)).title()).data("languages", Words.languages().entrySet()).data("chosen", chosen).data("problem", problem)
                .data("texts", chosen.isEmpty() ? List.of() : plan(product).map(one -> translations.of(one, chosen)).orElse(List.of()));
    }

    @POST
    public Response keep(@PathParam("product") String product, MultivaluedMap<String, String> form) {
        String language = Optional.ofNullable(form.getFirst("language")).orElse("");
        Map<String, String> says = new LinkedHashMap<>();
        form.forEach((at, values) -> says.put(at, values.get(0)));
        says.keySet().removeAll(Set.of("language", "still-right"));
        Set<String> stillRight = Set.copyOf(form.getOrDefault("still-right", List.of()));
        try {
            Optional<Plan> plan = plan(product);
            plan.ifPresent(one -> translations.write(one, language, says, stillRight, editing.me()));
            return Response.seeOther(URI.create("/owner/plans/" + product + "/words?language=" + language)).build();
        } catch (IllegalArgumentException refused) {
            return Response.status(422).entity(page(product, language, refused.getMessage()).render()).build();
        }
    }
}
