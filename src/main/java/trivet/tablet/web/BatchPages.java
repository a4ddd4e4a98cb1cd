package trivet.tablet.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.RawString;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.batch.Dispute;
import trivet.check.Reading;
import trivet.deviation.BatchRecord;
import trivet.deviation.Daybook;
import trivet.device.Devices;
import trivet.device.Unit;
import trivet.ledger.Ids;
import trivet.limit.AlternativesLimit;
import trivet.outlook.Evidence;
import trivet.outlook.Outlook;
import trivet.outlook.Outlooks;
import trivet.plan.Plans;
import trivet.report.Curve;
import trivet.site.Confirmed;
import trivet.site.Sites;
import trivet.words.Words;

/** Beginning a batch, its page, and the number pads of its readings. */
@Path("/batches")
@Produces(MediaType.TEXT_HTML)
public class BatchPages {

    @Inject
    @Location("tablet/new.html")
    Template begin;
    @Inject
    @Location("tablet/batch.html")
    Template page;
    @Inject
    @Location("tablet/reading.html")
    Template reading;
    @Inject
    Screen screen;
    @Inject
    Daybook daybook;
    @Inject
    Devices devices;
    @Inject
    Plans plans;
    @Inject
    Sites sites;
    @Inject
    Outlooks outlooks;
    @Inject
    Clock clock;

    @GET
    @Path("new")
    public TemplateInstance begin() {
        return screen.of(begin).data("plans", plans.inForce(clock.instant())).data("ovens", devices.inUse(Unit.Kind.OVEN)).data("lastCode", daybook.lastCode());
    }

    private BatchRecord batch(String id) {
        return daybook.batch(id).orElseThrow(NotFoundException::new);
    }

    @GET
    @Path("{id}")
    public TemplateInstance page(@PathParam("id") String id) {
        BatchRecord batch = batch(id);
        LocalDate prepared = batch.day();
        int days = batch.plan().map(p -> p.plan().useByDays()).orElse(2);
        LocalDate useBy = sites.inForceAt(clock.instant()).flatMap(c -> c.rulebook().useBy()).map(rule -> rule.lastDay(prepared, days)).orElse(prepared.plusDays(days));
        List<Outlook> outlook = outlooks.of(batch);
        return screen.of(page).data("outlook", outlook).data("heat", Evidence.heat(batch).orElse("")).data("b", batch).data("curves", batch.runs().stream().map(run -> new RawString(Curve.svg(run, sites.current().orElseThrow().zone(), run.ended() ? List.of() : outlook, Optional.of(clock.instant())))).toList())
                .data("fridges", devices.inUse(Unit.Kind.FRIDGE, Unit.Kind.FREEZER)).data("places", devices.inUse(Unit.Kind.COOLING_RACK, Unit.Kind.BLAST_CHILLER, Unit.Kind.FRIDGE))
                .data("useBy", useBy).data("big", big(batch)).data("holdIds", String.join(" ", batch.holds().stream().map(hold -> hold.id()).toList()))
                .data("waitingIds", String.join(" ", Dispute.acceptable(batch.waiting(), batch.disputes()))).data("sheets", batch.entries().stream().flatMap(e -> e.sheet().stream()).distinct().toList()).data("checkIds", checkIds(batch));
    }

    private static Map<String, String> checkIds(BatchRecord batch) {
        return Map.of("core", Ids.derived(batch.id() + "/core"), "put-away", Ids.derived(batch.id() + "/put-away"));
    }

    /** The one big key of the page: its words, where it leads, or the record that it sends. */
    public record Big(String words, String link, String record) {
    }

    private static Big big(BatchRecord batch) {
        String at = "/batches/" + batch.id() + "/";
        return switch (batch.next().act()) {
            case "core", "reheat" -> new Big(Words.say("j_big_core"), at + batch.next().act(), "");
            case "cooling" -> new Big(Words.say("j_big_cooling"), at + "cooling", "");
            case "hot" -> new Big(Words.say("j_big_hot"), at + "hot", "");
            case "food" -> new Big(Words.say("j_big_food"), at + "food", "");
            case "back-in-oven" -> new Big(Words.say("j_big_back"), "", "back-in-oven");
            case "out-of-oven" -> new Big(Words.say("j_big_out"), "", "out-of-oven");
            case "deviation" -> batch.deviations().stream().filter(d -> d.holds()).findFirst()
                    .map(d -> new Big(Words.say("j_answer_the_deviation"), "/deviations/" + d.id(), "")).orElse(new Big("", "", ""));
            default -> new Big("", "", "");
        };
    }

    @GET
    @Path("{id}/{kind: core|cooling|food|reheat|hot}")
    public TemplateInstance reading(@PathParam("id") String id, @PathParam("kind") String kind) {
        BatchRecord batch = batch(id);
        Optional<Confirmed> rules = sites.inForceAt(clock.instant());
        Optional<String> food = batch.plan().flatMap(p -> rules.flatMap(r -> p.plan().food(r.rulebook().id())));
        boolean cook = kind.equals("core") || kind.equals("reheat");
        List<AlternativesLimit.Row> rows = cook ? rules.flatMap(r -> r.rulebook().alternatives(kind.equals("core") ? "core-cook" : "reheat"))
                .map(limit -> limit.rowsFor(food)).orElse(List.of()) : List.of();
        String law = rules.map(r -> r.rulebook().words(Map.of("core", "core-cook", "reheat", "reheat", "food", "chilled-storage", "hot", "hot-holding", "cooling", "cooling").get(kind), food)).orElse("");
        String limit = kind.equals("food") ? batch.plan().flatMap(p -> p.plan().storageAtMost()).map(b -> Words.say("j_which_its_use_by_rests_on", b.words())).orElse(law) : law;
        BigDecimal hold = rows.stream().filter(row -> row.seconds().compareTo(BigDecimal.valueOf(60)) < 0).map(AlternativesLimit.Row::seconds).max(BigDecimal::compareTo).orElse(BigDecimal.ZERO);
        String key = kind.equals("core") ? "core" : batch.checks().stream().filter(check -> check.key().startsWith(kind.equals("hot") ? "hot-" : "cool-") && check.takenBy().isEmpty()).findFirst().map(c -> c.key()).orElse(kind);
        return screen.of(reading).data("b", batch).data("kind", kind).data("record", kind.equals("core") ? "cook-reading" : kind.equals("hot") ? "hot-hold-reading" : kind + "-reading").data("limit", limit.isEmpty() ? Words.say("j_no_rulebook_is_confirmed_nothing_is") : limit)
                .data("hold", hold.stripTrailingZeros().toPlainString()).data("cook", cook).data("check", Ids.derived(id + "/" + key)).data("piece", batch.cookReadings().size() + 1)
                .data("last", batch.lastCooling().map(Reading::temperature).map(t -> t.inCelsius().toPlainString()).orElse(""))
                .data("probes", devices.probes().stream().filter(p -> p.active()).map(p -> Map.of("id", p.id(), "name", p.name(), "blocked", daybook.probeBlocked(p.id()).orElse(""))).toList());
    }
}
