package trivet.plan;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import trivet.limit.Problem;
import trivet.study.OpenPoints;
import trivet.study.Study;

/** The plans of the site. */
public interface Plans {

    /** The latest approved plan of every product. */
    List<ApprovedPlan> approved();

    /** The plan of every product that is in force at a moment; one that is signed for later is not among them. */
    List<ApprovedPlan> inForce(Instant moment);

    /** Every approval ever given, in order. */
    List<ApprovedPlan> history();

    /** Every approval of a product, in order. */
    default List<ApprovedPlan> history(String product) {
        return history().stream().filter(plan -> plan.ref().id().equals(product)).toList();
    }

    /** The plan of a product that was in force at a moment. */
    Optional<ApprovedPlan> inForceAt(String product, Instant moment);

    /** The site's own files, each with what is wrong with it. */
    List<Draft> drafts();

    /** Approves the site's file of a product; refuses one with problems or open points. */
    void approve(String product, String by, Instant from, String meaning);

    /**
     * A plan file of the site.
     *
     * @param waiting whether its text differs from the approved one, so that it waits for approval
     * @param study the hazard plan; empty for a file of the first format
     * @param open what it lacks before it can be approved
     */
    record Draft(String product, Optional<Plan> plan, List<Problem> problems, String sha256, boolean waiting, Optional<Study> study, List<OpenPoints.OpenPoint> open) {
    }
}
