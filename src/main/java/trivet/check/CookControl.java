package trivet.check;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trivet.batch.Told;
import trivet.cooling.CookJudge;
import trivet.cooling.CookPiece;
import trivet.cooling.CookVerdict;
import trivet.limit.AlternativesLimit;
import trivet.limit.Bound;
import trivet.limit.Verdict;
import trivet.measure.Temperature;
import trivet.words.Words;

/**
 * The core temperatures of a batch, after the bake or after a reheat. Attempts are told apart by a record "back in the oven": a bake that then passes
 * corrects the failed one at the step, while probing again until one passes does not.
 */
public final class CookControl {

    private final List<Attempt> attempts = new ArrayList<>();
    private final RuleAt rules;
    private final Duration again;

    /**
     * The rule that judges a reading.
     *
     * @param food the kind of food, where the rule has kinds
     */
    public record Rule(AlternativesLimit limit, Optional<String> food) {
    }

    /** Which rule is in force at a moment; empty where no rulebook was confirmed or it has none. */
    public interface RuleAt {
        Optional<Rule> at(Instant moment);
    }

    /** One time of probing: from the start or from a return to the oven. */
    private static final class Attempt {
        private final Optional<Instant> back;
        private final List<Reading> readings = new ArrayList<>();

        private Attempt(Optional<Instant> back) {
            this.back = back;
        }

        private Verdict verdict() {
            Map<Integer, List<Reading>> pieces = new LinkedHashMap<>();
            readings.forEach(reading -> pieces.computeIfAbsent(reading.piece().orElse(0), key -> new ArrayList<>()).add(reading));
            Verdict worst = readings.isEmpty() ? Verdict.UNJUDGED : Verdict.WITHIN;
            for (List<Reading> piece : pieces.values()) {
                Verdict last = piece.get(piece.size() - 1).verdict();
                boolean failed = piece.stream().anyMatch(reading -> reading.verdict() == Verdict.BREACHED);
                boolean passed = piece.stream().anyMatch(reading -> reading.verdict() == Verdict.WITHIN);
                worst = worst.orWorse(failed ? Verdict.BREACHED : passed ? Verdict.WITHIN : last);
            }
            return worst;
        }
    }

    /** A control that judges each reading by the rule in force when it was taken. */
    public CookControl(RuleAt rules, Duration again) {
        this.rules = rules;
        this.again = again;
        attempts.add(new Attempt(Optional.empty()));
    }

    /**
     * Judges a core reading as it comes in its order.
     *
     * @param doubt why the probe that took it is not to be trusted; a pass then counts as unjudged, a failure stays one
     */
    public void reading(Told told, Temperature temperature, Optional<String> doubt) {
        CookPiece piece = new CookPiece(temperature, told.data().decimal("held_seconds").filter(held -> held.signum() >= 0));
        Reading bare = new Reading(told, temperature, told.data().integer("piece"), piece.heldSeconds(), Verdict.UNJUDGED, "");
        Optional<Rule> rule = rules.at(told.at());
        Reading judged;
        if (Reading.impossible(temperature)) {
            judged = bare.judged(Verdict.UNJUDGED, Words.say("j_no_food_has_this_temperature_it", temperature));
        } else if (rule.isEmpty()) {
            judged = bare.judged(Verdict.UNJUDGED, Words.say("j_no_confirmed_rulebook_has_a_limit", temperature));
        } else {
            CookVerdict verdict = CookJudge.judge(rule.get().limit(), rule.get().food(), List.of(piece));
            judged = bare.judged(verdict.verdict(), verdict.words());
            Optional<Bound> operating = rule.get().limit().operating();
            if (verdict.verdict() == Verdict.WITHIN && operating.isPresent() && !operating.get().meets(temperature)) {
                judged = judged.adjusting(Words.say("j_below_the_operating_limit_adjust_and", operating.get().words()));
            }
        }
        if (doubt.isPresent() && judged.verdict() == Verdict.WITHIN) {
            judged = bare.judged(Verdict.UNJUDGED, temperature.words() + ". " + doubt.get());
        }
        attempts.get(attempts.size() - 1).readings.add(judged);
    }

    /** The batch went back in the oven. */
    public void backInOven(Instant at) {
        attempts.add(new Attempt(Optional.of(at)));
    }

    /** Whether the batch went back in the oven and has not been probed since. */
    public boolean bakingAgain() {
        return attempts.size() > 1 && attempts.get(attempts.size() - 1).readings.isEmpty();
    }

    /** All core readings in order. */
    public List<Reading> readings() {
        return attempts.stream().flatMap(attempt -> attempt.readings.stream()).toList();
    }

    /** The verdict: the last attempt's, unless an earlier failure was not put right at the step. */
    public Verdict verdict() {
        if (!uncorrected().isEmpty()) {
            return Verdict.BREACHED;
        }
        return lastMeasured().map(Attempt::verdict).orElse(Verdict.UNJUDGED);
    }

    private Optional<Attempt> lastMeasured() {
        return attempts.stream().filter(attempt -> !attempt.readings.isEmpty()).reduce((a, b) -> b);
    }

    /** The failed readings that no later bake has put right. */
    public List<Reading> uncorrected() {
        return failed(false);
    }

    /** The failed readings that a recorded return to the oven, in time, and then a pass have put right. */
    public List<Reading> corrected() {
        return failed(true);
    }

    private List<Reading> failed(boolean wanted) {
        List<Reading> failed = new ArrayList<>();
        for (int i = 0; i < attempts.size(); i++) {
            for (Reading reading : attempts.get(i).readings) {
                if (reading.verdict() == Verdict.BREACHED && putRight(i, reading) == wanted) {
                    failed.add(reading);
                }
            }
        }
        return failed;
    }

    private boolean putRight(int attempt, Reading reading) {
        if (attempt + 1 >= attempts.size()) {
            return false;
        }
        Instant back = attempts.get(attempt + 1).back.orElseThrow();
        boolean inTime = !back.isAfter(reading.at().plus(again));
        boolean passed = lastMeasured().map(last -> attempts.indexOf(last) > attempt && last.verdict() == Verdict.WITHIN).orElse(false);
        return inTime && passed;
    }
}
