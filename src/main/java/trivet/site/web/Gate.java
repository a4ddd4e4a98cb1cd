package trivet.site.web;

import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.Cookie;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import trivet.device.Devices.Tablet;
import trivet.device.Devices;
import trivet.people.People;
import trivet.people.Person;
import trivet.site.Site;
import trivet.site.web.Sessions.Session;
import trivet.words.Words;
import trivet.words.web.Spoken;

/**
 * Decides for every request who asks and whether it may be answered. Cookies are HttpOnly and SameSite=Strict, and
 * whatever changes something must come from this site's own pages.
 */
class Gate {

    static final String TABLET = "trivet-tablet";
    static final String SESSION = "trivet-session";
    static final String LANGUAGE = "trivet-language";
    private static final List<String> OPEN = List.of("/api/rulebooks", "/api/calc/", "/api/schemas/", "/session", "/start", "/words.js", "/words/", "/calculators", "/sw.js", "/manifest.webmanifest", "/tablet/shell", "/join");
    private static final List<String> TABLET_ALONE = List.of("/work", "/due.json", "/cooling", "/batches/", "/events", "/tablet/kit.json", "/photos/", "/waiting", "/wall");

    @Inject
    Devices devices;
    @Inject
    People people;
    @Inject
    Sessions sessions;
    @Inject
    Caller caller;
    @Inject
    Door door;
    @Inject
    HttpServerRequest http;
    @ConfigProperty(name = "trivet.lan", defaultValue = "false")
    boolean lan;

    @ServerRequestFilter(preMatching = true)
    Optional<Response> enter(ContainerRequestContext request) {
        String path = request.getUriInfo().getPath();
        boolean reads = List.of("GET", "HEAD").contains(request.getMethod());
        Optional<Tablet> tablet = tablet(request);
        Optional<Session> session = cookie(request, SESSION).flatMap(token -> sessions.seen(token, request.getHeaderString("Trivet-Unattended") == null && !path.equals("/events")));
        boolean owner = session.map(Session::owner).orElse(false);
        Optional<Person> person = session.flatMap(s -> people.find(s.person())).filter(sessions::here);
        if (path.startsWith("/reports/") && person.isEmpty()) {
            person = basic(request);
            owner = person.isPresent();
        }
        caller.is(tablet, person, owner);
        Spoken.in(person.map(Person::language).or(() -> cookie(request, LANGUAGE)).orElse(Words.FIRST));
        if (lan && !door.secure(http) && !Door.loopback(http) && !path.equals("/join") && !path.equals("/join/ca.crt")) {
            return Optional.of(reads ? Response.seeOther(URI.create("/join")).build() : refusal(403, Words.say("j_only_over_https")));
        }
        if (!reads && !bearer(request) && !path.startsWith("/api/calc/") && fromElsewhere(request)) {
            return Optional.of(refusal(403, Words.say("j_this_was_not_sent_from_a")));
        }
        if (path.equals("/") || OPEN.stream().anyMatch(path::startsWith)) {
            return Optional.empty();
        }
        return door(path, reads, tablet, person, owner);
    }

    private Optional<Response> door(String path, boolean reads, Optional<Tablet> tablet, Optional<Person> person, boolean owner) {
        if (path.startsWith("/api/")) {
            if (tablet.isEmpty()) {
                return Optional.of(refusal(401, Words.say("j_this_needs_the_credential_of_a")));
            }
            return tablet.get().revoked() && !path.equals("/api/tablet/review") ? Optional.of(refusal(403, Words.say("j_this_tablet_s_credential_was_taken")))
                    : Optional.empty();
        }
        if (path.startsWith("/owner")) {
            return owner ? Optional.empty() : Optional.of(Response.seeOther(URI.create("/session/owner")).build());
        }
        boolean known = tablet.map(t -> !t.revoked()).orElse(false);
        if (person.isPresent() || (known && reads && TABLET_ALONE.stream().anyMatch(path::startsWith))) {
            return Optional.empty();
        }
        if (path.startsWith("/reports/")) {
            return Optional.of(Response.status(401).header("WWW-Authenticate", "Basic realm=\"reports\", charset=\"UTF-8\"")
                    .type("text/plain;charset=UTF-8").entity("Sign in on the tablet, or send the owner's id and password.\n").build());
        }
        return Optional.of(Response.seeOther(URI.create("/")).build());
    }

    private Optional<Tablet> tablet(ContainerRequestContext request) {
        String header = request.getHeaderString("Authorization");
        Optional<String> token = header != null && header.startsWith("Bearer ") ? Optional.of(header.substring(7).strip())
                : cookie(request, TABLET);
        return token.flatMap(devices::ofToken);
    }

    private Optional<Person> basic(ContainerRequestContext request) {
        String header = request.getHeaderString("Authorization");
        if (header == null || !header.startsWith("Basic ")) {
            return Optional.empty();
        }
        try {
            String[] both = new String(Base64.getDecoder().decode(header.substring(6).strip()), StandardCharsets.UTF_8).split(":", 2);
            sessions.end(sessions.byPassword(both[0], both.length > 1 ? both[1] : ""));
            return people.find(both[0]);
        } catch (IllegalArgumentException refused) {
            return Optional.empty();
        }
    }

    private static Optional<String> cookie(ContainerRequestContext request, String name) {
        return Optional.ofNullable(request.getCookies().get(name)).map(Cookie::getValue);
    }

    private static boolean bearer(ContainerRequestContext request) {
        String header = request.getHeaderString("Authorization");
        return header != null && header.startsWith("Bearer ");
    }

    private static boolean fromElsewhere(ContainerRequestContext request) {
        String site = request.getHeaderString("Sec-Fetch-Site");
        if (site != null && !site.equals("same-origin") && !site.equals("none")) {
            return true;
        }
        String origin = request.getHeaderString("Origin");
        if (origin == null) {
            return site == null && !request.getCookies().isEmpty();
        }
        try {
            return !request.getUriInfo().getRequestUri().getAuthority().equals(URI.create(origin).getAuthority());
        } catch (IllegalArgumentException unreadable) {
            return true;
        }
    }

    private static Response refusal(int status, String title) {
        return Response.status(status).type("application/problem+json").entity(Map.of("type", "about:blank", "title", title,
                "status", status, "errors", List.of())).build();
    }

    @ServerResponseFilter
    void leave(ContainerResponseContext response) {
        response.getHeaders().putSingle("Cache-Control", "no-store");
    }
}
