package trivet.ledger.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;
import trivet.ledger.Journal;

/** Says in {@code /q/health} that records can be read, how many there are, and how many commits the writer has made since the start. */
@Readiness
@ApplicationScoped
class LedgerHealth implements HealthCheck {

    @Inject
    Journal journal;
    @Inject
    Writer writer;

    @Override
    public HealthCheckResponse call() {
        return HealthCheckResponse.named("records").up().withData("received", journal.lastNumber()).withData("commits", writer.commits()).build();
    }
}
