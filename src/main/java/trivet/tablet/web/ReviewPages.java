package trivet.tablet.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import trivet.check.Reading;
import trivet.deviation.BatchRecord;
import trivet.deviation.Daybook;
import trivet.ledger.Asides;
import trivet.ledger.Clashes;
import trivet.ledger.Entry;
import trivet.ledger.Heard;
import trivet.ledger.Journal;
import trivet.ledger.Ledger;
import trivet.measure.web.ProblemException;
import trivet.measure.web.StrictJson;
import trivet.people.Person;
import trivet.site.web.Caller;
import trivet.site.web.OwnSession;
import trivet.words.Words;

/** The owner's list of what wants a look: unplanned batches, what waits for acceptance, clashing and odd records, and numbers that never came. */
@Path("/owner/review")
@Produces(MediaType.TEXT_HTML)
public class ReviewPages {

    private static final Duration UNPLANNED_BACK = Duration.ofDays(60);
    private static final Duration ODD_BACK = Duration.ofDays(14);
    private static final int MOST_CLASHES = 50;
    private static final int MOST_GAPS = 50;

    @Inject
    @Location("site/review.html")
    Template page;
    @Inject
    Screen screen;
    @Inject
    Daybook daybook;
    @Inject
    Journal journal;
    @Inject
    Clashes clashes;
    @Inject
    Asides asides;
    @Inject
    Ledger ledger;
    @Inject
    Caller caller;
    @Inject
    Heard heard;
    @Inject
    Clock clock;

    /** Takes in a refused record as it is, after the owner looked at it; refuses with the reason when it still cannot be taken in. */
    @POST
    @Path("take")
    public Response take(@FormParam("number") long number) {
        Asides.Aside aside = asides.find(number).orElseThrow(NotFoundException::new);
        byte[] body = aside.body().getBytes(StandardCharsets.UTF_8);
        if (OwnSession.needed(StrictJson.object(body).path("kind").asText(""))) {
            return refused(Words.say("j_only_the_person_who_decides_this"));
        }
        try {
            Ledger.Receipt receipt = ledger.put(StrictJson.object(body).path("id").asText(""), body, aside.device(), Optional.empty());
            if (receipt.outcome() != Ledger.Outcome.CLASHING) {
                asides.taken(number, receipt.receiveNumber(), caller.person().map(Person::id).orElseThrow());
                return Response.seeOther(URI.create("/owner/review")).build();
            }
            return refused(Words.say("j_another_record_has_this_id"));
        } catch (ProblemException still) {
            return refused(still.errors().isEmpty() ? still.getMessage() : still.errors().get(0).field() + ": " + still.errors().get(0).message());
        }
    }

    private Response refused(String why) {
        return Response.status(422).type(MediaType.TEXT_HTML).entity(page(Words.say("j_still_not_taken_in", why)).render()).build();
    }

    @GET
    public TemplateInstance review() {
        return page("");
    }

    private TemplateInstance page(String problem) {
        Instant now = clock.instant();
        List<BatchRecord> batches = daybook.begun(now.minus(UNPLANNED_BACK), now.plus(Duration.ofDays(1)));
        List<BatchRecord> unplanned = batches.stream().filter(BatchRecord::unplanned).toList();
        List<BatchRecord> waiting = batches.stream().filter(batch -> !batch.waiting().isEmpty()).toList();
        List<BatchRecord> disputed = batches.stream().filter(batch -> !batch.disputes().isEmpty()).toList();
        List<Clashes.Clash> clashing = clashes.latest(MOST_CLASHES);
        List<Entry> odd = journal.between(now.minus(ODD_BACK), now.plus(Duration.ofDays(3650))).stream().filter(entry -> entry.fromTheFuture()
                || entry.data().temperature("temperature").map(Reading::impossible).orElse(false)).toList();
        List<Journal.Gap> gaps = journal.gaps(MOST_GAPS);
        List<Asides.Aside> refused = asides.latest(MOST_CLASHES).stream().filter(one -> !one.taken()).toList();
        List<Heard.Anew> anew = heard.anew();
        List<Heard.Word> holding = heard.words().stream().filter(word -> word.waiting() > 0 || word.sequence() > journal.lastSequence(word.device())).toList();
        return page.data("problem", problem).data("gaps", gaps).data("refused", refused).data("anew", anew).data("holding", holding).data("show", screen).data("unplanned", unplanned).data("waiting", waiting).data("clashes", clashing).data("disputed", disputed).data("odd", odd)
                .data("total", unplanned.size() + waiting.size() + clashing.size() + disputed.size() + odd.size() + gaps.size() + refused.size() + anew.size() + holding.size());
    }
}
