package trivet.deviation;

import java.util.List;
import trivet.batch.Life;
import trivet.check.CookControl;
import trivet.check.CoolingRun;
import trivet.cooling.StageVerdict;
import trivet.deviation.BatchRecord.Next;
import trivet.limit.Verdict;

/** The one thing to do next with a batch. */
final class NextStep {

    private NextStep() {
    }

    static Next of(Life life, CookControl cook, List<CoolingRun> runs, List<Hold> holds, List<Deviation> deviations, boolean coolingBegun, boolean hot) {
        if (life.over()) {
            boolean open = deviations.stream().anyMatch(d -> d.state() == Deviation.State.OPEN);
            return open ? new Next("A deviation of this batch is still to be answered.", "deviation") : new Next("Nothing more to do.", "none");
        }
        if (cook.verdict() == Verdict.BREACHED && !coolingBegun) {
            return new Next("Below the limit. Back in the oven, then probe again.", "back-in-oven");
        }
        boolean open = deviations.stream().anyMatch(d -> d.state() == Deviation.State.OPEN);
        if (open) {
            return new Next("On hold. Set it apart and answer the deviation.", "deviation");
        }
        if (!holds.isEmpty()) {
            return new Next("On hold. A second person decides.", "deviation");
        }
        if (life == Life.STORED) {
            return new Next("Put away. Record when it is sold, dispatched or destroyed.", "gone");
        }
        if (cook.readings().isEmpty() || cook.verdict() != Verdict.WITHIN) {
            return new Next("Probe the core of the thickest piece.", "core");
        }
        if (!coolingBegun) {
            return new Next("Baked through. Take it out and start the cooling clock.", "out-of-oven");
        }
        boolean waiting = runs.stream().anyMatch(run -> !run.ended() && run.verdict().waiting());
        if (waiting && !hot) {
            String words = runs.get(runs.size() - 1).verdict().stages().stream().filter(StageVerdict::waiting).findFirst().map(StageVerdict::words).orElse("");
            return new Next("Cooling. " + words, "cooling");
        }
        return new Next(hot ? "Kept hot. Record when it is sold." : "Cooled in time. Put it away.", hot ? "gone" : "put-away");
    }
}
