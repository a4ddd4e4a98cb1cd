package trivet.deviation;

import java.time.Instant;
import java.util.Optional;
import trivet.check.CoolingControl;
import trivet.plan.ApprovedPlan;
import trivet.site.Confirmed;
import trivet.site.Site;

/** What a batch is judged with: the site, its rulebooks, the plan at its start and as it was later, probes and units, and the present moment. */
record Surroundings(Site site, Rules rules, Instant now, Optional<ApprovedPlan> plan, PlanAt plans, Optional<Part> part, ProbeBook probes, Units units) {

    /** The rulebooks of the site by time. */
    interface Rules extends CoolingControl.InForce {
        Optional<Confirmed> at(Instant moment);
    }

    /** The version of the batch's plan that was in force at a moment; empty for a batch that is unplanned. */
    interface PlanAt {
        Optional<ApprovedPlan> at(Instant moment);
    }

    /** What was read in a unit from a moment on; empty for a unit that is not known. */
    interface Units {
        Optional<UnitRecord> since(String unit, Instant from);
    }

    /** What a part of a split batch is, beside what it inherits. */
    record Part(String id, String code, String parent, int trays, int pieces, boolean hot) {
    }
}
