package trivet.deviation;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import trivet.batch.Told;
import trivet.check.CookControl;
import trivet.check.CoolingRun;
import trivet.check.Minutes;
import trivet.check.Reading;
import trivet.cooling.StageVerdict;
import trivet.limit.AlternativesLimit;
import trivet.limit.Verdict;
import trivet.words.Words;

/**
 * A reheat of a batch that cooled too slowly: allowed once, while the plan's minutes since the cooling clock began allow it,
 * and never after a missed last stage or when the times are not known, since toxins survive heat.
 *
 * @param begun the record that began it
 * @param core the core readings of the reheat
 * @param out when it was out of the oven again, once it was
 */
record Reheat(Told begun, CookControl core, Optional<Instant> out) {

    Reheat(Told begun, CookControl core) {
        this(begun, core, Optional.empty());
    }

    Reheat out(Instant at) {
        return new Reheat(begun, core, Optional.of(at));
    }

    /**
     * Why a batch may not be reheated at a moment, as a sentence; empty when it may.
     *
     * @param allowed the plan's minutes from the start of the cooling clock; 0 for never
     * @param curves the curves of the run that would end, judged as of the moment
     * @param earlier how often it was reheated before
     */
    static Optional<String> refusal(int allowed, List<CoolingRun> curves, int earlier, Instant at) {
        if (allowed == 0) {
            return Optional.of(Words.say("j_the_plan_allows_no_reheat"));
        }
        if (earlier > 0) {
            return Optional.of(Words.say("j_it_was_reheated_once_already"));
        }
        Optional<Instant> clock = curves.stream().flatMap(run -> run.verdict().stages().stream().flatMap(stage -> stage.clock().stream())
                .map(minute -> Minutes.after(run.origin(), minute))).min(Instant::compareTo);
        if (clock.isEmpty()) {
            return Optional.of(Words.say("j_it_is_not_known_when_the"));
        }
        if (at.isAfter(Minutes.after(clock.get(), BigDecimal.valueOf(allowed)))) {
            return Optional.of(Words.say("j_more_than_the_plan_s_min", allowed));
        }
        boolean missed = curves.stream().map(run -> run.verdict().stages().get(run.verdict().stages().size() - 1)).anyMatch(Reheat::missed);
        return missed ? Optional.of(Words.say("j_the_last_stage_of_the_cooling")) : Optional.empty();
    }

    private static boolean missed(StageVerdict last) {
        return last.verdict() == Verdict.BREACHED || (last.verdict() == Verdict.UNJUDGED && !last.waiting());
    }

    /** The readings that failed the reheat limit, or met it later than the rule allows. */
    List<Reading> failed(Optional<AlternativesLimit> limit) {
        List<Reading> failed = new java.util.ArrayList<>(core.uncorrected());
        limit.flatMap(AlternativesLimit::withinMinutes).ifPresent(minutes -> core.readings().stream()
                .filter(reading -> reading.verdict() == Verdict.WITHIN && reading.at().isAfter(Minutes.after(begun.at(), minutes)))
                .forEach(reading -> failed.add(reading.judged(Verdict.BREACHED, Words.say("j_hot_enough_but_later_than_min", reading.temperature(), minutes.stripTrailingZeros().toPlainString())))));
        return failed;
    }
}
