package trivet.plan;

import java.time.Instant;
import java.util.Optional;
import trivet.ledger.VersionRef;
import trivet.study.Study;

/**
 * A plan as an owner approved it; the frozen text judges, whatever happens to the file.
 *
 * @param from from when it is in force
 * @param signedAt when it was signed
 * @param meaning what the signature means
 * @param study the hazard plan it was made from; empty for one of the first format
 */
public record ApprovedPlan(Plan plan, VersionRef ref, String by, Instant from, Instant signedAt, String meaning, String text, Optional<Study> study) {
}
