package trivet.lan.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
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
import java.time.Clock;
import java.util.List;
import java.util.Map;
import trivet.device.Devices;
import trivet.lan.HostName;
import trivet.ledger.Heard;
import trivet.ledger.Journal;
import trivet.site.web.Door;
import trivet.site.web.Moments;
import trivet.site.web.QrCode;
import trivet.words.Words;

/** The owner's page of tablets and of the bakery's network: invite a tablet, take a credential away, fix the host name. */
@Path("/owner/tablets")
@Produces(MediaType.TEXT_HTML)
public class NetworkPages {

    @Inject
    @Location("lan/tablets.html")
    Template page;
    @Inject
    @Location("lan/invite.html")
    Template invite;
    @Inject
    Address address;
    @Inject
    Invitations invitations;
    @Inject
    Devices devices;
    @Inject
    Heard heard;
    @Inject
    Journal journal;
    @Inject
    Moments moments;
    @Inject
    Door door;
    @Inject
    Clock clock;

    @GET
    public String show() {
        return page("", "");
    }

    private String page(String problem, String name) {
        List<Heard.Word> holding = holding();
        List<Map<String, Object>> tablets = devices.tablets().stream().map(tablet -> {
            var word = heard.of(tablet.id());
            return Map.<String, Object>of("id", tablet.id(), "name", tablet.name(), "revoked", tablet.revoked(), "heard", word.map(one -> moments.moment(one.at())).orElse(""), "waiting", word.map(Heard.Word::waiting).orElse(0));
        }).toList();
        return page.data("address", address).data("tablets", tablets).data("next", address.next()).data("holding", holding.size()).data("records", holding.stream().mapToInt(Heard.Word::waiting).sum())
                .data("problem", problem).data("asked", name).render();
    }

    private List<Heard.Word> holding() {
        return heard.words().stream().filter(word -> word.waiting() > 0 || word.photos() > 0 || word.sequence() > journal.lastSequence(word.device())).toList();
    }

    @POST
    @Path("invite")
    public Response invite(@FormParam("name") @DefaultValue("") String name) {
        if (name.isBlank()) {
            return Response.status(422).entity(page(Words.say("j_a_tablet_needs_a_name"), "")).build();
        }
        String code = invitations.invite(name.strip(), door.person().orElseThrow());
        String where = address.secure() + "/join/" + code;
        return Response.ok(invite.data("name", name.strip()).data("code", code.substring(0, 4) + " " + code.substring(4)).data("where", where).data("picture", new RawString(QrCode.svg(where))).data("address", address)
                .data("until", moments.moment(clock.instant().plus(Invitations.HOLDS))).render()).build();
    }

    @POST
    @Path("revoke")
    public Response revoke(@FormParam("id") String id) {
        try {
            devices.revoke(id, door.person().orElseThrow());
            return Response.seeOther(URI.create("/owner/tablets")).build();
        } catch (IllegalArgumentException unknown) {
            return Response.status(422).entity(page(unknown.getMessage(), "")).build();
        }
    }

    /** Another host name from the next start on. What waits on tablets waits under the present one: the owner is told how many, and must say so. */
    @POST
    @Path("host")
    public Response host(@FormParam("host") @DefaultValue("") String host, @FormParam("sure") @DefaultValue("") String sure) {
        try {
            String name = HostName.checked(host);
            List<Heard.Word> holding = holding();
            if (!name.equals(address.next()) && !holding.isEmpty() && !sure.equals("yes")) {
                return Response.status(422).entity(page(Words.say("j_tablets_hold_unsent", holding.size(), holding.stream().mapToInt(Heard.Word::waiting).sum(), address.host()), name)).build();
            }
            address.next(name);
            return Response.seeOther(URI.create("/owner/tablets")).build();
        } catch (IllegalArgumentException refused) {
            return Response.status(422).entity(page(refused.getMessage(), "")).build();
        }
    }
}
