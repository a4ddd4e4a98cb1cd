package trivet.site.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import trivet.device.Devices.Probe;
import trivet.device.Devices;
import trivet.device.Unit;
import trivet.people.People;
import trivet.people.Person;
import trivet.people.Role;
import trivet.site.DemoRemoval;
import trivet.site.Site;
import trivet.site.Sites;
import trivet.words.Words;

/** The first start, and the owner's screens: people, units and probes. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
public class OwnerPages {

    @Inject
    @Location("site/start.html")
    Template start;
    @Inject
    @Location("site/owner.html")
    Template owner;
    @Inject
    @Location("site/gone.html")
    Template gone;
    @Inject
    @Location("site/badge.html")
    Template badge;
    @Inject
    DemoRemoval demoRemoval;
    @Inject
    People people;
    @Inject
    Devices devices;
    @Inject
    Sites sites;
    @Inject
    Sessions sessions;
    @Inject
    Caller caller;
    @Inject
    Clock clock;

    @GET
    @Path("start")
    public Response start(HttpServerRequest request) {
        return people.hasOwner() ? Response.seeOther(URI.create("/")).build()
                : Response.ok(start.data("problem", null).data("form", Map.of("zone", "Europe/London", "day_ends", "03:00")).render()).build();
    }

    @POST
    @Path("start")
    public Response begin(HttpServerRequest request, MultivaluedMap<String, String> form) {
        if (people.hasOwner() || !Door.loopback(request)) {
            return Response.status(403).entity(start.data("problem", Words.say("j_the_bakery_is_set_up_already"))
                    .data("form", Map.of()).render()).build();
        }
        try {
            String name = needed(form, "bakery", Words.say("j_the_name_of_the_bakery"));
            String person = needed(form, "owner", Words.say("j_your_name"));
            String initials = needed(form, "initials", Words.say("j_your_initials"));
            Site site = new Site("site", name, first(form, "address"), ZoneId.of(needed(form, "zone", Words.say("j_the_time_zone"))),
                    LocalTime.parse(needed(form, "day_ends", Words.say("j_the_hour_at_which_the_day"))), false);
            String pin = first(form, "pin");
            String password = first(form, "password");
            if (!pin.matches("\\d{4,8}") || password.length() < 10) {
                throw new IllegalArgumentException(Words.say("j_a_pin_has_four_to_eight"));
            }
            String id = people.newId(person);
            sites.write(site, id);
            people.setPin(id, pin, id);
            people.setPassword(id, password, id);
            people.write(new Person(id, person, initials, EnumSet.of(Role.OWNER, Role.BAKER), true), id);
            devices.write(new Unit("oven-1", "Oven 1", Unit.Kind.OVEN, true), id);
            devices.write(new Unit("fridge-1", "Fridge 1", Unit.Kind.FRIDGE, true), id);
            devices.write(new Unit("rack-1", "Cooling rack", Unit.Kind.COOLING_RACK, true), id);
            devices.write(new Probe("P1", "Probe 1", true), id);
            return SignIn.signedIn(sessions.byPassword(id, password), "/owner/rulebook");
        } catch (IllegalArgumentException | java.time.DateTimeException refused) {
            return Response.status(422).entity(start.data("problem", refused.getMessage()).data("form", single(form)).render()).build();
        }
    }

    private static Map<String, String> single(MultivaluedMap<String, String> form) {
        Map<String, String> values = new java.util.HashMap<>();
        form.forEach((key, list) -> values.put(key, list.get(0)));
        return values;
    }

    private static String first(MultivaluedMap<String, String> form, String name) {
        return Optional.ofNullable(form.getFirst(name)).orElse("").strip();
    }

    private static String needed(MultivaluedMap<String, String> form, String name, String what) {
        String value = first(form, name);
        if (value.isEmpty()) {
            throw new IllegalArgumentException(Words.say("j_please_give", what));
        }
        return value;
    }

    @GET
    @Path("owner")
    public TemplateInstance owner(@QueryParam("problem") String problem) {
        return owner.data("site", sites.current().orElseThrow()).data("people", people.list()).data("units", devices.units())
                .data("probes", devices.probes()).data("tablets", devices.tablets()).data("kinds", Unit.Kind.values())
                .data("confirmed", sites.inForceAt(clock.instant()).orElse(null)).data("problem", problem);
    }

    @POST
    @Path("owner/people")
    public Response addPerson(@FormParam("name") @DefaultValue("") String name, @FormParam("initials") @DefaultValue("") String initials,
            @FormParam("role") @DefaultValue("BAKER") String role, @FormParam("pin") @DefaultValue("") String pin) {
        return change(() -> {
            if (name.isBlank() || initials.isBlank()) {
                throw new IllegalArgumentException(Words.say("j_a_person_needs_a_name_and"));
            }
            String id = people.newId(name);
            people.setPin(id, pin, by());
            people.write(new Person(id, name.strip(), initials.strip(), Set.of(Role.valueOf(role)), true), by());
        });
    }

    @POST
    @Path("owner/people/end")
    public Response endPerson(@FormParam("id") String id) {
        return change(() -> people.find(id).ifPresent(p -> people.write(p.as(!p.active()), by())));
    }

    @POST
    @Path("owner/people/last-day")
    public Response lastDay(@FormParam("id") String id, @FormParam("day") @DefaultValue("") String day) {
        return change(() -> {
            try {
                Optional<java.time.LocalDate> last = day.isBlank() ? Optional.empty() : Optional.of(java.time.LocalDate.parse(day.strip()));
                people.find(id).ifPresent(p -> people.write(p.until(last), by()));
            } catch (java.time.DateTimeException unreadable) {
                throw new IllegalArgumentException(Words.say("j_a_day_is_written_like", day));
            }
        });
    }

    /** A new badge, shown once to be printed. */
    @POST
    @Path("owner/people/badge")
    public Response badge(@FormParam("id") @DefaultValue("") String id) {
        Optional<Person> person = people.find(id).filter(Person::active);
        return person.isEmpty() ? Response.seeOther(URI.create("/owner")).build()
                : Response.ok(badge.data("person", person.get()).data("code", new RawString(QrCode.svg(people.newBadge(id, by())))).data("site", sites.current().orElseThrow()).render()).build();
    }

    @POST
    @Path("owner/units")
    public Response addUnit(@FormParam("name") @DefaultValue("") String name, @FormParam("kind") @DefaultValue("FRIDGE") String kind) {
        return change(() -> {
            if (name.isBlank()) {
                throw new IllegalArgumentException(Words.say("j_a_unit_needs_a_name"));
            }
            String id = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
            devices.write(new Unit(id, name.strip(), Unit.Kind.valueOf(kind), true), by());
        });
    }

    @POST
    @Path("owner/probes")
    public Response addProbe(@FormParam("id") @DefaultValue("") String id, @FormParam("name") @DefaultValue("") String name) {
        return change(() -> {
            if (!id.matches("[A-Za-z0-9-]{1,20}")) {
                throw new IllegalArgumentException(Words.say("j_a_probe_needs_a_short_mark"));
            }
            devices.write(new Probe(id, name.isBlank() ? id : name.strip(), true), by());
        });
    }

    /** Marks the demo's folder to be taken away once the service has stopped, and stops it. */
    @POST
    @Path("owner/demo/remove")
    public Response removeDemo(@FormParam("sure") @DefaultValue("") String sure) {
        if (!sites.current().map(Site::demo).orElse(false) || !sure.strip().equals(Words.say("j_remove_the_demo"))) {
            return change(() -> {
                throw new IllegalArgumentException(Words.say("j_nothing_was_removed_type_remove_the"));
            });
        }
        demoRemoval.request();
        return Response.ok(gone.render()).build();
    }

    private String by() {
        return caller.person().map(Person::id).orElseThrow();
    }

    private static Response change(Runnable change) {
        try {
            change.run();
            return Response.seeOther(URI.create("/owner")).build();
        } catch (IllegalArgumentException refused) {
            return Response.seeOther(jakarta.ws.rs.core.UriBuilder.fromPath("/owner").queryParam("problem", "{p}").build(refused.getMessage())).build();
        }
    }
}
