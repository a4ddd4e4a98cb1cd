package trivet.deviation;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import trivet.batch.Life;
import trivet.check.Reading;
import trivet.limit.Basis;
import trivet.limit.RangeLimit;
import trivet.limit.Standing;
import trivet.limit.Verdict;
import trivet.words.Words;

/**
 * Judges the keeping of a batch: the food in the fridge, the fridge's own readings, and what is kept hot. Where the plan's
 * use-by rests on a temperature stricter than the rulebook's, that is the limit of the batch.
 */
final class StorageJudgement {

    private final BatchFold fold;
    private final Answers answers;
    private final Optional<UnitRecord> unit;

    StorageJudgement(BatchFold fold, Answers answers) {
        this.fold = fold;
        this.answers = answers;
        this.unit = fold.life == Life.STORED ? fold.putAway.flatMap(told -> told.data().text("unit").flatMap(name -> fold.around.units().since(name, told.at())))
                : Optional.empty();
    }

    /** The limit of the batch where it is kept, at a moment. */
    private Optional<RangeLimit> limit(Instant at) {
        String name = unit.map(u -> u.unit().kind().limit()).filter(text -> !text.isEmpty()).orElse("chilled-storage");
        Optional<RangeLimit> law = limit(name, at);
        var own = fold.planAt(at).flatMap(p -> p.plan().storageAtMost()).filter(bound -> name.equals("chilled-storage"));
        if (own.isEmpty() || law.flatMap(RangeLimit::maximum).filter(max -> law.get().inForce()).map(max -> !own.get().stricterThan(max)).orElse(false)) {
            return law;
        }
        Basis basis = Basis.override(Standing.PRACTICE, Words.say("j_the_plan_of_this_product"), Words.say("j_the_use_by_rests_on_it"));
        return Optional.of(new RangeLimit(name, law.flatMap(RangeLimit::minimum), own, basis));
    }

    private Optional<RangeLimit> limit(String name, Instant at) {
        return fold.around.rules().at(at).flatMap(c -> c.rulebook().range(name)).map(range -> fold.planAt(at).map(p -> p.plan().range(range)).orElse(range));
    }

    /** The batch's limit in words. */
    String words() {
        return limit(fold.around.now()).map(RangeLimit::words).orElse("");
    }

    /** The limit of hot holding in words. */
    String hotWords() {
        return limit("hot-holding", fold.around.now()).map(RangeLimit::words).orElse("");
    }

    private Reading judged(Reading reading, Optional<RangeLimit> limit, String where) {
        if (Reading.impossible(reading.temperature()) || limit.isEmpty() || !limit.get().inForce()) {
            return reading.judged(Verdict.UNJUDGED, Words.say("j_not_judged", reading.temperature()));
        }
        Verdict verdict = limit.get().judge(reading.temperature());
        if (verdict == Verdict.BREACHED) {
            return reading.judged(verdict, Words.say("j_the_limit_is", reading.temperature(), where, limit.get().words(), limit.get().basis().standing().breachWords()));
        }
        Optional<String> doubt = fold.doubt(reading.told());
        if (doubt.isPresent()) {
            return reading.judged(Verdict.UNJUDGED, reading.temperature().words() + ". " + doubt.get());
        }
        Reading within = reading.judged(verdict, Words.say("j_within", reading.temperature(), limit.get().words()));
        return limit.get().asksForAdjustment(reading.temperature())
                ? within.adjusting(Words.say("j_past_the_operating_limit_adjust_and", limit.get().operating().get().words())) : within;
    }

    /** The readings of the food since it was put away, judged. */
    List<Reading> judgedFood() {
        return fold.foodReadings.stream().filter(reading -> fold.putAway.map(away -> reading.at().isAfter(away.at())).orElse(false))
                .map(reading -> fold.versioned(judged(reading, limit(reading.at()), Words.say("j_in_the_food")))).toList();
    }

    List<Reading> warmFood() {
        return judgedFood().stream().filter(reading -> reading.verdict() == Verdict.BREACHED).toList();
    }

    /** The readings of what is kept hot, judged. */
    List<Reading> judgedHot() {
        return fold.hotReadings.stream().map(reading -> judged(reading, limit("hot-holding", reading.at()), Words.say("j_kept_hot"))).toList();
    }

    List<Reading> coolHot() {
        return judgedHot().stream().filter(reading -> reading.verdict() == Verdict.BREACHED).toList();
    }

    /** Readings of the unit past the batch's own limit, up to the food's next good reading. */
    record Episode(List<Reading> readings, Optional<Reading> probed) {
    }

    /** The episodes in which the unit was within the rulebook's limit and past the plan's. */
    List<Episode> pastOwnLimit() {
        List<Episode> episodes = new ArrayList<>();
        if (unit.isEmpty()) {
            return episodes;
        }
        List<Reading> past = unit.get().readings().stream().filter(reading -> reading.verdict() == Verdict.WITHIN && limit(reading.at())
                .map(own -> own.judge(reading.temperature()) == Verdict.BREACHED).orElse(false)).map(reading -> judged(reading, limit(reading.at()), Words.say("j_in", unit.get().unit().name()))).toList();
        List<Reading> good = judgedFood().stream().filter(reading -> reading.verdict() == Verdict.WITHIN).toList();
        List<Reading> episode = new ArrayList<>();
        for (Reading reading : Stream.concat(past.stream(), good.stream()).sorted(java.util.Comparator.comparing(Reading::at)).toList()) {
            if (reading.verdict() == Verdict.BREACHED) {
                episode.add(reading);
            } else if (!episode.isEmpty()) {
                episodes.add(new Episode(List.copyOf(episode), Optional.of(reading)));
                episode.clear();
            }
        }
        if (!episode.isEmpty()) {
            episodes.add(new Episode(List.copyOf(episode), Optional.empty()));
        }
        return episodes;
    }

    /** Holds the batch while its unit has been seen warm and its own food not probed within since. */
    List<Hold> warmUnit() {
        List<Hold> holds = new ArrayList<>();
        List<Reading> food = judgedFood();
        for (Deviation warm : unit.map(UnitRecord::deviations).orElse(List.of())) {
            boolean probed = food.stream().anyMatch(reading -> reading.verdict() == Verdict.WITHIN && !reading.at().isBefore(warm.since()));
            boolean released = fold.entries.stream().anyMatch(entry -> Answers.released(entry, warm.id()));
            if (!probed && !released) {
                holds.add(new Hold(warm.id(), Words.say("j_was_warm_probe_the_food_of", unit.get().unit().name()), warm.since(), true));
            }
        }
        return holds;
    }
}
