package trivet.deviation;

import java.time.Instant;
import java.util.Optional;
import trivet.ledger.VersionRef;
import trivet.plan.ApprovedPlan;
import trivet.plan.Plans;

/**
 * The approved versions of one batch's plan.
 *
 * @param first the one in force at its start, which holds where later none is; empty for a batch that is unplanned
 */
record BatchPlans(Plans plans, Optional<ApprovedPlan> first) implements Surroundings.PlanVersions {

    @Override
    public Optional<ApprovedPlan> at(Instant moment) {
        return first.flatMap(plan -> plans.inForceAt(plan.ref().id(), moment).or(() -> first));
    }

    @Override
    public Optional<ApprovedPlan> named(VersionRef ref) {
        return first.filter(plan -> plan.ref().id().equals(ref.id())).flatMap(plan -> plans.history(ref.id()).stream().filter(one -> one.ref().equals(ref)).findFirst());
    }
}
