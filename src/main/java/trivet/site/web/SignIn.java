package trivet.site.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.ws.rs.CookieParam;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.NewCookie;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import trivet.people.People;
import trivet.people.Person;
import trivet.people.Role;
import trivet.site.Sites;
import trivet.words.Words;

/** The tiles of the people, and signing in with a PIN or the owner's password. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class SignIn {

    @Inject
    @Location("site/tiles.html")
    Template tiles;
    @Inject
    @Location("site/pin.html")
    Template pin;
    @Inject
    @Location("site/password.html")
    Template password;
    @Inject
    @Location("site/languages.html")
    Template languages;
    @Inject
    People people;
    @Inject
    Sites sites;
    @Inject
    Sessions sessions;
    @Inject
    Caller caller;
    @Inject
    FirstTablet firstTablet;

    @GET
    public Response tiles(HttpServerRequest request) {
        if (!people.hasOwner()) {
            return Response.seeOther(URI.create("/start")).build();
        }
        Response.ResponseBuilder answer = Response.ok(tiles.data("site", sites.current().orElseThrow())
                .data("people", people.list().stream().filter(sessions::here).toList()).data("known", caller.tablet().isPresent())
                .data("device", caller.tablet().map(trivet.device.Devices.Tablet::id).orElse("")).render());
        if (caller.tablet().isEmpty() && Door.loopback(request)) {
            firstTablet.token().ifPresent(token -> answer.cookie(cookie(Gate.TABLET, token, 10 * 365 * 86_400)));
        }
        return answer.build();
    }

    static NewCookie cookie(String name, String value, int seconds) {
        return new NewCookie.Builder(name).value(value).path("/").httpOnly(true).sameSite(NewCookie.SameSite.STRICT).maxAge(seconds).build();
    }

    @GET
    @Path("session/pin/{person}")
    public TemplateInstance pin(@PathParam("person") String person) {
        return pinPage(person, null);
    }

    private TemplateInstance pinPage(String person, String problem) {
        return pin.data("person", known(person)).data("digits", people.pinDigits(person).map(String::valueOf).orElse("")).data("problem", problem);
    }

    @POST
    @Path("session/pin/{person}")
    public Response enter(HttpServerRequest request, @PathParam("person") String person, @FormParam("pin") @DefaultValue("") String typed) {
        try {
            return here(request, sessions.byPin(person, typed), people.find(person).map(p -> p.roles().contains(Role.OUTSIDER)).orElse(false) ? "/deviations" : "/work");
        } catch (IllegalArgumentException refused) {
            return Response.status(403).entity(pinPage(person, refused.getMessage()).render()).build();
        }
    }

    /** A badge that was scanned. */
    @POST
    @Path("session/badge")
    public Response badge(HttpServerRequest request, @FormParam("badge") @DefaultValue("") String text) {
        try {
            String token = sessions.byBadge(text.strip());
            return here(request, token, People.onBadge(text.strip()).flatMap(people::find).map(p -> p.roles().contains(Role.OUTSIDER)).orElse(false) ? "/deviations" : "/work");
        } catch (IllegalArgumentException refused) {
            return Response.status(403).type("text/plain;charset=UTF-8").entity(refused.getMessage()).build();
        }
    }

    /** The languages, for the person signed in; for nobody, those of the tiles. */
    @GET
    @Path("session/language")
    public TemplateInstance languages() {
        return languages.data("languages", Words.languages().entrySet()).data("present", Words.language()).data("person", caller.person().map(Person::name).orElse(""));
    }

    /** Speaks another language from now on: to the person wherever that person signs in, or on this tablet to whoever has not. */
    @POST
    @Path("session/language")
    public Response speak(@FormParam("language") @DefaultValue("en") String language) {
        String tag = Words.languages().containsKey(language) ? language : Words.FIRST;
        if (caller.person().isEmpty()) {
            return Response.seeOther(URI.create("/")).cookie(cookie(Gate.LANGUAGE, tag, 10 * 365 * 86_400)).build();
        }
        people.write(caller.person().get().speaking(tag), caller.person().get().id());
        return Response.seeOther(URI.create("/work")).build();
    }

    @GET
    @Path("session/owner")
    public TemplateInstance password() {
        return password.data("owners", people.list().stream().filter(Person::owner).toList()).data("problem", null);
    }

    @POST
    @Path("session/owner")
    public Response enterAsOwner(HttpServerRequest request, @FormParam("person") @DefaultValue("") String person, @FormParam("password") @DefaultValue("") String typed) {
        try {
            return here(request, sessions.byPassword(person, typed), "/owner");
        } catch (IllegalArgumentException refused) {
            return Response.status(403).entity(password.data("owners", people.list().stream().filter(Person::owner).toList())
                    .data("problem", refused.getMessage()).render()).build();
        }
    }

    /** Somebody is there: keeps the session alive. */
    @POST
    @Path("session/alive")
    public Response alive() {
        return Response.status(caller.person().isPresent() ? 204 : 401).build();
    }

    @POST
    @Path("session/end")
    public Response leave(@CookieParam(Gate.SESSION) String token) {
        if (token != null) {
            sessions.end(token);
        }
        return Response.seeOther(URI.create("/")).cookie(cookie(Gate.SESSION, "", 0)).build();
    }

    /** Signs in, and gives this machine's own browser its tablet's credential when it has none yet. */
    private Response here(HttpServerRequest request, String token, String then) {
        Response.ResponseBuilder answer = Response.seeOther(URI.create(then));
        NewCookie session = new NewCookie.Builder(Gate.SESSION).value(token).path("/").httpOnly(true).secure("https".equals(request.scheme())).sameSite(NewCookie.SameSite.STRICT).build();
        if (caller.tablet().isPresent() || !Door.loopback(request) || firstTablet.token().isEmpty()) {
            return answer.cookie(session).build();
        }
        return answer.cookie(session, cookie(Gate.TABLET, firstTablet.token().get(), 10 * 365 * 86_400)).build();
    }

    static Response signedIn(String token, String then) {
        return Response.seeOther(URI.create(then)).cookie(cookie(Gate.SESSION, token, -1)).build();
    }

    private Person known(String person) {
        return people.find(person).orElseThrow(() -> new jakarta.ws.rs.NotFoundException());
    }
}
