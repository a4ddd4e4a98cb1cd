package trivet.deviation;

import java.time.Instant;
import java.util.Optional;
import trivet.check.CoolingControl;
import trivet.ledger.VersionRef;
import trivet.plan.ApprovedPlan;
import trivet.site.Confirmed;
import trivet.site.Site;

/** What a batch is judged with: the site, its rulebooks, the plan at its start and as it was later, probes and units, and the present moment. */
record Surroundings(Site site, Rules rules, Instant now, Optional<ApprovedPlan> plan, PlanVersions plans, Optional<Part> part, ProbeBook probes, Units units) {

    /** The rulebooks of the site by time. */
    interface Rules extends CoolingControl.InForce {
        Optional<Confirmed> at(Instant moment);
    }

    /** The versions of the batch's plan. */
    interface PlanVersions {

        /** The one that was in force at a moment; empty for a batch that is unplanned. */
        Optional<ApprovedPlan> at(Instant moment);

        /** The one that a record names; empty where no such one was ever approved. */
        Optional<ApprovedPlan> named(VersionRef ref);
    }

    /** The same, judged by one version whenever it was measured. */
    Surroundings by(ApprovedPlan version) {
        PlanVersions only = new PlanVersions() {
            @Override
            public Optional<ApprovedPlan> at(Instant moment) {
                return Optional.of(version);
            }

            @Override
            public Optional<ApprovedPlan> named(VersionRef ref) {
                return plans.named(ref);
            }
        };
        return new Surroundings(site, rules, now, plan, only, part, probes, units);
    }

    /** What was read in a unit from a moment on; empty for a unit that is not known. */
    interface Units {
        Optional<UnitRecord> since(String unit, Instant from);
    }

    /** What a part of a split batch is, beside what it inherits. */
    record Part(String id, String code, String parent, int trays, int pieces, boolean hot) {
    }
}
