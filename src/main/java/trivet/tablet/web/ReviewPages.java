package trivet.tablet.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import trivet.check.Reading;
import trivet.deviation.BatchRecord;
import trivet.deviation.Daybook;
import trivet.ledger.Asides;
import trivet.ledger.Clashes;
import trivet.ledger.Entry;
import trivet.ledger.Heard;
import trivet.ledger.Journal;

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
    Heard heard;
    @Inject
    Clock clock;

    @GET
    public TemplateInstance review() {
        Instant now = clock.instant();
        List<BatchRecord> batches = daybook.begun(now.minus(UNPLANNED_BACK), now.plus(Duration.ofDays(1)));
        List<BatchRecord> unplanned = batches.stream().filter(BatchRecord::unplanned).toList();
        List<BatchRecord> waiting = batches.stream().filter(batch -> !batch.waiting().isEmpty()).toList();
        List<BatchRecord> disputed = batches.stream().filter(batch -> !batch.disputes().isEmpty()).toList();
        List<Clashes.Clash> clashing = clashes.latest(MOST_CLASHES);
        List<Entry> odd = journal.between(now.minus(ODD_BACK), now.plus(Duration.ofDays(3650))).stream().filter(entry -> entry.fromTheFuture()
                || entry.data().temperature("temperature").map(Reading::impossible).orElse(false)).toList();
        List<Journal.Gap> gaps = journal.gaps(MOST_GAPS);
        List<Asides.Aside> refused = asides.latest(MOST_CLASHES);
        List<Heard.Anew> anew = heard.anew();
        List<Heard.Word> holding = heard.words().stream().filter(word -> word.waiting() > 0 || word.sequence() > journal.lastSequence(word.device())).toList();
        return page.data("gaps", gaps).data("refused", refused).data("anew", anew).data("holding", holding).data("show", screen).data("unplanned", unplanned).data("waiting", waiting).data("clashes", clashing).data("disputed", disputed).data("odd", odd)
                .data("total", unplanned.size() + waiting.size() + clashing.size() + disputed.size() + odd.size() + gaps.size() + refused.size() + anew.size() + holding.size());
    }
}
