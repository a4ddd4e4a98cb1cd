package trivet.ledger.web;

import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.operators.multi.processors.BroadcastProcessor;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Duration;
import trivet.ledger.Journal;

/**
 * Tells every open screen that a record has been received, as server-sent events, so that it asks anew. An event carries the receive number and
 * nothing else; the first one, sent on connecting, is the last record's, so that a screen that was away catches up at once.
 */
@Path("/events")
@ApplicationScoped
public class Bell {

    private static final Duration ALIVE = Duration.ofSeconds(15);
    private final BroadcastProcessor<Long> received = BroadcastProcessor.create();

    @Inject
    Journal journal;

    /** Rings for a record; one at a time, as the processor asks. */
    public synchronized void ring(long receiveNumber) {
        received.onNext(receiveNumber);
    }

    @GET
    @Produces(MediaType.SERVER_SENT_EVENTS)
    public Multi<Long> events() {
        Multi<Long> alive = Multi.createFrom().ticks().startingAfter(ALIVE).every(ALIVE).onOverflow().drop().map(tick -> journal.lastNumber());
        return Multi.createBy().merging().streams(Multi.createFrom().item(journal::lastNumber), received.onOverflow().drop(), alive);
    }
}
