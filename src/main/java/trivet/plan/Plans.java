package trivet.plan;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import trivet.limit.Problem;

/** The plans of the site. */
public interface Plans {

    /** The latest approved plan of every product. */
    List<ApprovedPlan> approved();

    /** Every approval ever given, in order. */
    List<ApprovedPlan> history();

    /** The plan of a product that was in force at a moment. */
    Optional<ApprovedPlan> inForceAt(String product, Instant moment);

    /** The site's own files, each with what is wrong with it. */
    List<Draft> drafts();

    /** Approves the site's file of a product; refuses one with problems. */
    void approve(String product, String by, Instant from);

    /**
     * A plan file of the site.
     *
     * @param waiting whether its text differs from the approved one, so that it waits for approval
     */
    record Draft(String product, Optional<Plan> plan, List<Problem> problems, String sha256, boolean waiting) {
    }
}
