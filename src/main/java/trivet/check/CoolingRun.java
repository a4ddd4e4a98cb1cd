package trivet.check;

import java.time.Instant;
import java.util.List;
import trivet.cooling.CoolingVerdict;
import trivet.ledger.VersionRef;
import trivet.limit.StagedCooling;

/**
 * One run of cooling of one curve: from the oven, or from a recorded reheat.
 *
 * @param number counted from 1; a reheat begins the next
 * @param origin the moment of minute 0
 * @param ended whether the run was ended by a reheat; its open stages then hold nothing
 */
public record CoolingRun(int number, Instant origin, List<Reading> readings, CoolingVerdict verdict, StagedCooling rule, VersionRef rulebook,
        boolean ended) {
}
