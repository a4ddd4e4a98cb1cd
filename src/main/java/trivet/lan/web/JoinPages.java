package trivet.lan.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
import io.quarkus.qute.Template;
import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import trivet.device.Devices;
import trivet.site.web.Door;
import trivet.site.web.QrCode;
import trivet.words.Words;

/** How a tablet joins. Over plain http this is all that another machine is shown: how to trust the bakery's certificate, and where to go then. */
@Path("/join")
@Produces(MediaType.TEXT_HTML)
public class JoinPages {

    @Inject
    @Location("lan/explain.html")
    Template explain;
    @Inject
    @Location("lan/join.html")
    Template join;
    @Inject
    @Location("lan/test.html")
    Template test;
    @Inject
    Address address;
    @Inject
    Invitations invitations;
    @Inject
    Devices devices;
    @Inject
    Door door;
    @Inject
    Clock clock;

    @GET
    public String show(HttpServerRequest request) {
        if (address.open() && !door.secure(request)) {
            return explain.data("secure", address.secure() + "/join").data("code", new RawString(QrCode.svg(address.secure() + "/join"))).data("authority", address.authority().isPresent()).data("fingerprint", address.fingerprint()).render();
        }
        return page("", "");
    }

    private String page(String code, String problem) {
        return join.data("code", code).data("problem", problem).render();
    }

    /** The authority's certificate, for the tablet's list of those it trusts. */
    @GET
    @Path("ca.crt")
    @Produces("application/x-x509-ca-cert")
    public Response authority() {
        byte[] encoded = address.authority().orElseThrow(NotFoundException::new);
        return Response.ok(encoded).header("Content-Disposition", "attachment; filename=\"trivet-bakery.crt\"").build();
    }

    /** The test of what works on this tablet. */
    @GET
    @Path("test")
    public String test() {
        return test.data("known", door.tablet().isPresent()).data("device", door.tablet().orElse("")).render();
    }

    /** The service's moment, for the test of the clock. */
    @GET
    @Path("now.json")
    @Produces(MediaType.APPLICATION_JSON)
    public Map<String, Long> now() {
        return Map.of("now", clock.millis());
    }

    @GET
    @Path("{code}")
    public String invited(@PathParam("code") String code) {
        return page(code, invitations.valid(code) ? "" : Words.say("j_code_not_valid"));
    }

    @POST
    public Response enter(HttpServerRequest request, @FormParam("code") @DefaultValue("") String code) {
        Optional<Invitations.Guest> guest = invitations.take(code);
        if (guest.isEmpty()) {
            return Response.status(403).entity(page(code, Words.say("j_code_not_valid"))).build();
        }
        String token = devices.enrol(guest.get().name(), guest.get().by());
        return Response.seeOther(URI.create("/join/test")).cookie(door.tabletCookie(request, token)).build();
    }
}
