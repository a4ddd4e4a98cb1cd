package trivet.site.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
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
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import trivet.limit.Limit;
import trivet.limit.LimitNumbers;
import trivet.limit.LimitOverride;
import trivet.limit.Rulebook;
import trivet.limit.Rulebooks;
import trivet.limit.Standing;
import trivet.people.Person;
import trivet.site.Sites;
import trivet.words.Words;

/** Where an owner reads a rulebook's numbers with their sources, changes them and confirms them. */
@Path("owner/rulebook")
@Produces(MediaType.TEXT_HTML)
public class RulebookPages {

    /** What an owner types before a number looser than the law is taken. */
    private static final String LOOSER = "looser than the law";

    @Inject
    @Location("site/rulebook.html")
    Template rulebook;
    @Inject
    Rulebooks rulebooks;
    @Inject
    Sites sites;
    @Inject
    Caller caller;
    @Inject
    Clock clock;

    @GET
    public TemplateInstance rulebook(@QueryParam("id") String id) {
        return page(id, null);
    }

    private TemplateInstance page(String id, String problem) {
        Rulebook chosen = id == null ? null : rulebooks.find(id).orElse(null);
        return rulebook.data("rulebooks", rulebooks.list()).data("chosen", chosen)
                .data("limits", chosen == null ? List.of() : chosen.limits().stream().map(RulebookPages::shown).toList())
                .data("history", sites.confirmations()).data("problem", problem).data("looser", LOOSER)
                .data("today", java.time.LocalDate.ofInstant(clock.instant(), sites.current().orElseThrow().zone()));
    }

    /** A limit with every number, as it is shown for confirmation. */
    public record ShownLimit(Limit limit, List<LimitNumbers.LimitNumber> numbers, boolean suggestion) {

        /** Its standing in words. */
        public String standing() {
            return limit.basis().standing().words();
        }
    }

    private static ShownLimit shown(Limit limit) {
        return new ShownLimit(limit, LimitNumbers.of(limit), limit.basis().suggestion());
    }

    @POST
    public Response confirm(MultivaluedMap<String, String> form) {
        String id = first(form, "id");
        try {
            Rulebook chosen = rulebooks.find(id).orElseThrow(() -> new IllegalArgumentException(Words.say("j_pick_a_rulebook_first")));
            List<LimitOverride> overrides = overrides(form, chosen);
            if (first(form, "name").isEmpty()) {
                throw new IllegalArgumentException(Words.say("j_confirm_with_your_name_these_numbers"));
            }
            Set<String> adopted = new HashSet<>(Optional.ofNullable(form.get("adopt")).orElse(List.of()));
            sites.confirm(id, adopted, overrides, caller.person().map(Person::id).orElseThrow(), clock.instant());
            return Response.seeOther(URI.create("/owner")).build();
        } catch (IllegalArgumentException refused) {
            return Response.status(422).entity(page(id, refused.getMessage()).render()).build();
        }
    }

    private static List<LimitOverride> overrides(MultivaluedMap<String, String> form, Rulebook chosen) {
        List<LimitOverride> overrides = new ArrayList<>();
        for (Limit limit : chosen.limits()) {
            for (LimitNumbers.LimitNumber number : LimitNumbers.of(limit)) {
                String key = limit.id() + "/" + number.path();
                String value = first(form, "value:" + key);
                if (value.isEmpty()) {
                    continue;
                }
                LimitOverride override = new LimitOverride(limit.id(), number.path(), value, first(form, "reason:" + key),
                        first(form, "source:" + key), Standing.PRACTICE);
                boolean looser = override.looserThan(limit);
                if (looser && number.basis().standing() == Standing.LAW && !first(form, "looser").equals(LOOSER)) {
                    throw new IllegalArgumentException(Words.say("j_your_number_for_is_looser_than", value, limit.id(), number.text(), LOOSER));
                }
                overrides.add(override);
            }
        }
        return overrides;
    }

    private static String first(MultivaluedMap<String, String> form, String name) {
        return Optional.ofNullable(form.getFirst(name)).orElse("").strip();
    }
}
