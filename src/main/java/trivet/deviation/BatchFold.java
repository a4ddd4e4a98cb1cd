package trivet.deviation;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import trivet.batch.Life;
import trivet.batch.Told;
import trivet.check.CookControl;
import trivet.check.CoolingControl;
import trivet.check.Reading;
import trivet.ledger.Entry;
import trivet.limit.Verdict;
import trivet.measure.Temperature;
import trivet.plan.ApprovedPlan;
import trivet.site.Confirmed;
import trivet.words.Words;

/** Folds the records of one batch, in one reading of the doubtful ones, into what they tell; {@link BatchJudgement} judges it. */
final class BatchFold {

    private static final Duration BACKWARDS = Duration.ofSeconds(2);
    final Surroundings around;
    final List<Entry> entries;
    final List<Told> told;
    final Entry start;
    final Optional<ApprovedPlan> plan;
    final String id;
    final String code;
    final CookControl cook;
    final List<Reheat> reheats = new ArrayList<>();
    final CoolingControl cooling = new CoolingControl();
    final List<Hold> holds = new ArrayList<>();
    final List<Reading> foodReadings = new ArrayList<>();
    final List<Reading> hotReadings = new ArrayList<>();
    final boolean hot;
    Optional<Told> putAway = Optional.empty();
    Optional<Told> over = Optional.empty();
    Optional<Told> split = Optional.empty();
    Life life = Life.BEGUN;
    private Optional<Entry> destroyed = Optional.empty();
    private int gonePieces;
    private boolean measured;

    BatchFold(Surroundings around, List<Entry> entries, List<Told> told) {
        this.around = around;
        this.entries = entries;
        this.told = told;
        this.start = entries.stream().filter(entry -> entry.kind().equals("batch-started")).findFirst().orElseThrow();
        this.id = around.part().map(Surroundings.Part::id).orElse(start.batch().orElse(start.id()));
        this.code = around.part().map(Surroundings.Part::code).orElse(start.data().text("code").orElse("?"));
        this.hot = around.part().map(Surroundings.Part::hot).orElse(false);
        this.plan = around.plan();
        this.cook = new CookControl(rows("core-cook"), Duration.ofMinutes(plan.map(p -> p.plan().bakeAgainMinutes()).orElse(20)));
        told.forEach(this::tell);
    }

    /** The rows of a limit as they hold for this product at a moment. */
    CookControl.RuleAt rows(String limit) {
        return moment -> around.rules().at(moment).flatMap(confirmed -> confirmed.rulebook().alternatives(limit)
                .map(rows -> new CookControl.Rule(planAt(moment).map(p -> p.plan().rows(rows)).orElse(rows), food(confirmed, moment))));
    }

    /** The version of the plan that judges what is measured at a moment: the one in force then. */
    Optional<ApprovedPlan> planAt(Instant moment) {
        return around.plans().at(moment);
    }

    /** A reading that says which version of the plan judged it, where that is not the one of the batch's start. */
    Reading versioned(Reading reading) {
        Optional<Integer> now = planAt(reading.at()).map(p -> p.ref().version());
        return now.isEmpty() || plan.map(p -> p.ref().version()).equals(now) ? reading : reading.adding(Words.say("j_judged_by_version", now.get()));
    }

    private Optional<String> food(Confirmed confirmed, Instant moment) {
        return planAt(moment).flatMap(p -> p.plan().food(confirmed.rulebook().id())).or(() -> start.data().text("food").filter(f -> plan.isPresent()));
    }

    /** What was noted of a control by the plan's own criterion, in order. */
    List<Told> ownChecks(String item) {
        return told.stream().filter(one -> one.kind().equals("plan-check") && one.data().text("item").map(item::equals).orElse(false)).toList();
    }

    /** Why the probe of a record is not to be trusted. */
    Optional<String> doubt(Told one) {
        return one.entry().instrument().flatMap(probe -> around.probes().blocked(probe, one.at()));
    }

    /**
     * Why the time of a record is not to be trusted: the same tablet had typed an earlier record at a later hour, so its clock was set back in between
     * and nothing tells by how much.
     */
    Optional<String> clockDoubt(Told one) {
        boolean back = entries.stream().anyMatch(other -> other.device().equals(one.entry().device()) && other.deviceSeq() < one.entry().deviceSeq()
                && other.enteredAt().isAfter(one.entry().enteredAt().plus(BACKWARDS)));
        return back && !one.entry().time().stated() && one.at().equals(one.entry().claimedAt()) ? Optional.of(Words.say("j_the_clock_ran_back")) : Optional.empty();
    }

    /** The record that destroyed the batch, while that stands. */
    Optional<Entry> destroyed() {
        return destroyed.filter(entry -> life == Life.DESTROYED);
    }

    /** A reheat that is going on: begun, and not yet out of the oven again. */
    Optional<Reheat> reheating() {
        return reheats.isEmpty() || reheats.get(reheats.size() - 1).out().isPresent() ? Optional.empty() : Optional.of(reheats.get(reheats.size() - 1));
    }

    private void tell(Told one) {
        Optional<Temperature> temperature = one.data().temperature("temperature");
        measured |= temperature.isPresent();
        switch (one.kind()) {
            case "batch-started" -> life = one.data().text("oven").isPresent() ? Life.BAKING : life;
            case "cook-reading" -> temperature.ifPresent(t -> {
                cook.reading(one, t, doubt(one));
                life = life == Life.BEGUN ? Life.BAKING : life;
            });
            case "back-in-oven" -> backInOven(one);
            case "out-of-oven" -> outOfOven(one);
            case "cooling-reading", "food-reading" -> temperature.ifPresent(t -> measuredCold(one, t));
            case "reheat-begun" -> {
                cooling.reheat(one.at());
                reheats.add(new Reheat(one, new CookControl(rows("reheat"), Duration.ofMinutes(plan.map(p -> p.plan().bakeAgainMinutes()).orElse(20)))));
            }
            case "reheat-reading" -> temperature.ifPresent(t -> {
                if (!reheats.isEmpty()) {
                    reheats.get(reheats.size() - 1).core().reading(one, t, doubt(one));
                }
            });
            case "hot-hold-reading" -> temperature.ifPresent(t -> hotReadings.add(bare(one, t)));
            case "put-away" -> {
                putAway = Optional.of(one);
                life = life.over() ? life : Life.STORED;
            }
            case "split" -> {
                split = Optional.of(one);
                if (around.part().isEmpty() && one.entry().batch().map(id::equals).orElse(false)) {
                    end(one, Life.SPLIT);
                }
            }
            case "gone", "destroyed" -> leave(one);
            case "struck-out" -> strikeOut(one);
            case "held" -> holds.add(new Hold(one.entry().id(), Words.say("j_held_by", one.entry().person(), one.data().text("reason").orElse("–")), one.at()));
            default -> { }
        }
    }

    private static Reading bare(Told one, Temperature temperature) {
        return new Reading(one, temperature, Optional.empty(), Optional.empty(), Verdict.UNJUDGED, "");
    }

    private void backInOven(Told one) {
        if (reheating().isPresent()) {
            reheating().get().core().backInOven(one.at());
            return;
        }
        cook.backInOven(one.at());
        cooling.backInOven();
        life = life == Life.COOLING ? Life.BAKING : life;
    }

    private void outOfOven(Told one) {
        reheating().ifPresent(reheat -> reheats.set(reheats.size() - 1, reheat.out(one.at())));
        cooling.outOfOven(one);
        life = life.compareTo(Life.COOLING) < 0 ? Life.COOLING : life;
    }

    private void measuredCold(Told one, Temperature temperature) {
        if (one.kind().equals("food-reading")) {
            foodReadings.add(bare(one, temperature));
        }
        if (one.kind().equals("cooling-reading") || putAway.isEmpty()) {
            cooling.reading(one, temperature);
            life = life.compareTo(Life.COOLING) < 0 ? Life.COOLING : life;
        }
    }

    private void end(Told one, Life as) {
        life = as;
        over = Optional.of(one);
    }

    int pieces() {
        return around.part().map(Surroundings.Part::pieces).orElse(start.data().integer("pieces").orElse(0));
    }

    private void leave(Told one) {
        gonePieces += one.data().integer("pieces").orElse(pieces() - gonePieces);
        if (gonePieces >= pieces()) {
            end(one, one.kind().equals("destroyed") ? Life.DESTROYED : Life.GONE);
        }
        if (one.kind().equals("destroyed")) {
            destroyed = Optional.of(one.entry());
        }
    }

    private void strikeOut(Told one) {
        boolean agreed = entries.stream().anyMatch(entry -> entry.kind().equals("strike-out-agreed") && !entry.person().equals(one.entry().person())
                && entry.data().text("of").map(one.entry().id()::equals).orElse(false));
        boolean later = entries.stream().anyMatch(entry -> entry.receiveNumber() > one.entry().receiveNumber() && entry.data().temperature("temperature").isPresent());
        if (later) {
            holds.add(new Hold(one.entry().id(), Words.say("j_a_reading_came_after_the_batch"), one.at()));
        } else if (measured && !agreed) {
            holds.add(new Hold(one.entry().id(), Words.say("j_struck_out_with_readings_a_second"), one.at()));
        } else {
            end(one, Life.STRUCK_OUT);
        }
    }

    /** The moment as of which the batch is judged: now, or its end. */
    Instant asOf() {
        return over.map(Told::at).filter(at -> life != Life.GONE && at.isBefore(around.now())).orElse(around.now());
    }

    Instant dayEnd() {
        return around.site().end(around.site().dayOf(start.claimedAt()));
    }

    Optional<LocalDate> useBy() {
        return putAway.flatMap(away -> away.data().text("use_by")).flatMap(text -> {
            try {
                return Optional.of(LocalDate.parse(text));
            } catch (java.time.DateTimeException unreadable) {
                return Optional.empty();
            }
        });
    }
}
