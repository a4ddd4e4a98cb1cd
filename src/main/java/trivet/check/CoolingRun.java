package trivet.check;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import trivet.cooling.CoolingVerdict;
import trivet.ledger.VersionRef;
import trivet.limit.StagedCooling;

/**
 * One run of cooling of one curve: from the oven, or from a recorded reheat.
 *
 * @param number counted from 1; a reheat begins the next
 * @param origin the moment of minute 0
 * @param clockDoubt how far the clocks of its records may be apart, where that alone could turn its verdict; empty where it could not
 * @param ended whether the run was ended by a reheat; its open stages then hold nothing
 */
public record CoolingRun(int number, Instant origin, List<Reading> readings, CoolingVerdict verdict, StagedCooling rule, VersionRef rulebook,
        Optional<Duration> clockDoubt, boolean ended) {
}
