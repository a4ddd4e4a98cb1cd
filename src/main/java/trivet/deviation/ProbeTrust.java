package trivet.deviation;

import java.time.Instant;
import java.util.Optional;

/** Which probe may be trusted when, by the checks of the last weeks, read once for many questions. */
public interface ProbeTrust {

    /** Why a probe is blocked at a moment, as a sentence; empty when what it measures then may be trusted. */
    Optional<String> blocked(String probe, Instant at);

    /** The end of the day on which a probe must be checked again, exclusive; empty where it is blocked at the moment or nothing is known of it. */
    Optional<Instant> trustedUntil(String probe, Instant at);
}
