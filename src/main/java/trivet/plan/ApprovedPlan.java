package trivet.plan;

import java.time.Instant;
import trivet.ledger.VersionRef;

/** A plan as an owner approved it; the frozen text judges, whatever happens to the file. */
public record ApprovedPlan(Plan plan, VersionRef ref, String by, Instant from) {
}
