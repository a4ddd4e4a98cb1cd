package trivet.alarm.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import trivet.alarm.Notices;
import trivet.alarm.Tally;
import trivet.alarm.send.Escalation;
import trivet.people.Person;
import trivet.site.web.Caller;

/** The owner says who is told of what nobody has seen to, and when not. */
@Path("/owner/notices")
@Produces(MediaType.TEXT_HTML)
public class NoticePages {

    @Inject
    @Location("alarm/notices.html")
    Template page;
    @Inject
    Notices notices;
    @Inject
    Escalation escalation;
    @Inject
    Tally tally;
    @Inject
    Caller caller;

    @GET
    public String show() {
        return page("", "");
    }

    private String page(String problem, String tried) {
        Notices.Settings now = notices.current();
        return page.data("mail", String.join(" ", now.mail())).data("hook", now.hook().map(URI::toString).orElse("")).data("from", now.quietFrom()).data("to", now.quietTo()).data("count", tally.count()).data("problem", problem).data("tried", tried).render();
    }

    @POST
    public Response keep(@FormParam("mail") @DefaultValue("") String mail, @FormParam("hook") @DefaultValue("") String hook, @FormParam("quiet_from") @DefaultValue("") String from, @FormParam("quiet_to") @DefaultValue("") String to) {
        try {
            notices.write(mail, hook, from, to, caller.person().map(Person::id).orElseThrow());
            return Response.seeOther(URI.create("/owner/notices")).build();
        } catch (IllegalArgumentException refused) {
            return Response.status(422).entity(page(refused.getMessage(), "")).build();
        }
    }

    @POST
    @Path("try")
    public String tryOut() {
        return page("", escalation.tryOut());
    }
}
