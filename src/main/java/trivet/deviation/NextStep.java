package trivet.deviation;

import java.util.List;
import java.util.Set;
import trivet.batch.Life;
import trivet.check.CoolingRun;
import trivet.cooling.StageVerdict;
import trivet.deviation.BatchRecord.Next;
import trivet.limit.Verdict;

/** The one thing to do next with a batch. */
final class NextStep {

    private NextStep() {
    }

    static Next of(BatchFold fold, List<CoolingRun> runs, List<Hold> holds, List<Deviation> deviations) {
        boolean open = deviations.stream().anyMatch(d -> d.state() == Deviation.State.OPEN);
        if (fold.life.over()) {
            return open ? new Next("A deviation of this batch is still to be answered.", "deviation") : new Next("Nothing more to do.", "none");
        }
        if (fold.cook.verdict() == Verdict.BREACHED && !fold.cooling.begun()) {
            return new Next("Below the limit. Back in the oven, then probe again.", "back-in-oven");
        }
        if (fold.reheating().isPresent()) {
            return reheating(fold.reheating().get());
        }
        if (holds.stream().anyMatch(hold -> hold.words().contains("Probe the food of this batch"))) {
            return new Next(holds.stream().map(Hold::words).filter(words -> words.contains("Probe the food of this batch")).findFirst().orElseThrow(), "food");
        }
        if (open) {
            return new Next("On hold. Set it apart and answer the deviation.", "deviation");
        }
        if (!holds.isEmpty()) {
            return new Next("On hold. A second person decides.", "deviation");
        }
        if (fold.life == Life.STORED) {
            return new Next("Put away. Record when it is sold, dispatched or destroyed.", "gone");
        }
        if (fold.cook.readings().isEmpty() || fold.cook.verdict() != Verdict.WITHIN) {
            return new Next("Probe the core of the thickest piece.", "core");
        }
        if (fold.hot) {
            return new Next("Kept hot. Probe it when the check falls due, and record when it is sold.", "hot");
        }
        if (!fold.cooling.begun()) {
            return new Next("Baked through. Take it out and start the cooling clock.", "out-of-oven");
        }
        if (runs.stream().anyMatch(run -> !run.ended() && run.verdict().waiting())) {
            String words = runs.get(runs.size() - 1).verdict().stages().stream().filter(StageVerdict::waiting).findFirst().map(StageVerdict::words).orElse("");
            return new Next("Cooling. " + words, "cooling");
        }
        return new Next("Cooled in time. Put it away.", "put-away");
    }

    private static Next reheating(Reheat reheat) {
        if (reheat.core().readings().isEmpty()) {
            return new Next("Reheating. Probe the core when it is hot enough.", "reheat");
        }
        return reheat.core().verdict() == Verdict.WITHIN ? new Next("Reheated. Take it out and start the cooling clock again.", "out-of-oven")
                : new Next("Below the reheat limit. Back in the oven, then probe again.", "back-in-oven");
    }
}
