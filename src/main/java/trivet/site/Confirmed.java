package trivet.site;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import trivet.ledger.VersionRef;
import trivet.limit.LimitOverride;
import trivet.limit.Rulebook;

/**
 * A rulebook as an owner confirmed it, with what was adopted and overridden; from then on, and until the next, it judges.
 *
 * @param ref the rulebook's id, the number of the confirmation, and the SHA-256 of the confirmed text with its changes
 */
public record Confirmed(Rulebook rulebook, VersionRef ref, String by, Instant at, Set<String> adopted, List<LimitOverride> overrides) {
}
