package trivet.deviation;

import java.util.List;
import java.util.Optional;
import trivet.batch.Life;
import trivet.check.CoolingRun;
import trivet.cooling.StageVerdict;
import trivet.deviation.BatchRecord.Next;
import trivet.limit.Verdict;
import trivet.words.Words;

/** The one thing to do next with a batch. */
final class NextStep {

    private NextStep() {
    }

    static Next of(BatchFold fold, List<CoolingRun> runs, List<Hold> holds, List<Deviation> deviations) {
        boolean open = deviations.stream().anyMatch(d -> d.state() == Deviation.State.OPEN);
        if (fold.life.over()) {
            return open ? new Next(Words.say("j_a_deviation_of_this_batch_is"), "deviation") : new Next(Words.say("j_nothing_more_to_do"), "none");
        }
        if (fold.cook.verdict() == Verdict.BREACHED && !fold.cooling.begun()) {
            return fold.cook.bakingAgain() ? new Next(Words.say("j_baking_again_probe_when_done"), "core") : new Next(Words.say("j_below_the_limit_back_in_the"), "back-in-oven");
        }
        if (fold.reheating().isPresent()) {
            return reheating(fold.reheating().get());
        }
        Optional<Hold> food = holds.stream().filter(Hold::probeFood).findFirst();
        if (food.isPresent()) {
            return new Next(food.get().words(), "food");
        }
        if (open) {
            return new Next(Words.say("j_on_hold_set_it_apart_and"), "deviation");
        }
        if (!holds.isEmpty()) {
            return new Next(Words.say("j_on_hold_a_second_person_decides"), "deviation");
        }
        if (fold.life == Life.STORED) {
            return new Next(Words.say("j_put_away_record_when_it_is"), "gone");
        }
        if (fold.cook.readings().isEmpty() || fold.cook.verdict() != Verdict.WITHIN) {
            return new Next(Words.say("j_probe_the_core_of_the_thickest"), "core");
        }
        if (fold.hot) {
            return new Next(Words.say("j_kept_hot_probe_it_when_the"), "hot");
        }
        if (!fold.cooling.begun()) {
            return new Next(Words.say("j_baked_through_take_it_out_and"), "out-of-oven");
        }
        if (runs.stream().anyMatch(run -> !run.ended() && run.verdict().waiting())) {
            String words = runs.get(runs.size() - 1).verdict().stages().stream().filter(StageVerdict::waiting).findFirst().map(StageVerdict::words).orElse("");
            return new Next(Words.say("j_cooling_now", words), "cooling");
        }
        return new Next(Words.say("j_cooled_in_time_put_it_away"), "put-away");
    }

    private static Next reheating(Reheat reheat) {
        if (reheat.core().readings().isEmpty()) {
            return new Next(Words.say("j_reheating_probe_the_core_when_it"), "reheat");
        }
        return reheat.core().verdict() == Verdict.WITHIN ? new Next(Words.say("j_reheated_take_it_out_and_start"), "out-of-oven")
                : new Next(Words.say("j_below_the_reheat_limit_back_in"), "back-in-oven");
    }
}
