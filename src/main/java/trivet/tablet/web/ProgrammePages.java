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
import trivet.check.Check;
import trivet.deviation.Daybook;
import trivet.deviation.ProgrammeRecord;
import trivet.deviation.Programmes;

/** Looking at a prerequisite programme that needs greater attention. */
@Path("/programmes/{item}")
@Produces(MediaType.TEXT_HTML)
public class ProgrammePages {

    @Inject
    @Location("tablet/own.html")
    Template page;
    @Inject
    Screen screen;
    @Inject
    Daybook daybook;
    @Inject
    Programmes programmes;

    @GET
    public TemplateInstance programme(@PathParam("item") String item) {
        ProgrammeRecord programme = programmes.of(daybook.today()).stream().filter(one -> one.programme().id().equals(item)).findFirst().orElseThrow(NotFoundException::new);
        return screen.of(page).data("kind", "programme-check").data("batch", null).data("item", item).data("heading", screen.text(programme.programme().title())).data("what", screen.text(programme.programme().what())).data("how", "").data("limit", "").data("corrective", "")
                .data("check", programme.check().map(Check::id).orElse("")).data("back", "/work");
    }
}
