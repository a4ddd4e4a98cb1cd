package trivet.report.web;

import io.quarkus.vertx.http.HttpServerStart;
import io.vertx.core.Vertx;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.ObservesAsync;
import jakarta.inject.Inject;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jboss.logging.Logger;
import trivet.plan.Plans;

/**
 * Prints the first plan once, for nobody, some seconds after the start: whoever asks for the first paper then need not wait until fonts and classes
 * are read.
 */
@ApplicationScoped
public class WarmPress {

    private static final long AFTER_MS = 10_000;
    private static final Logger LOG = Logger.getLogger(WarmPress.class);
    private final AtomicBoolean begun = new AtomicBoolean();

    @Inject
    PlanReports plans;
    @Inject
    Plans known;
    @Inject
    Vertx vertx;

    void ready(@ObservesAsync HttpServerStart started) {
        if (begun.compareAndSet(false, true)) {
            vertx.setTimer(AFTER_MS, timer -> vertx.executeBlocking((Callable<Integer>) this::print)
                    .onFailure(failed -> LOG.warn("No plan could be printed; the reports of this service may be broken.", failed)));
        }
    }

    /** Its length in bytes; 0 where there is no plan. */
    @ActivateRequestContext
    int print() {
        return known.drafts().stream().findFirst().map(draft -> plans.pdf(draft.product(), "a4").length).orElse(0);
    }
}
