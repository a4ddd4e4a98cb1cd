package trivet.cooling;

import java.util.List;
import trivet.limit.Verdict;

/** The verdict on a whole cooling: breached if any stage is, else unjudged if any is, else within. */
public record CoolingVerdict(Verdict whole, List<StageVerdict> stages) {

    /** The verdict over these stages. */
    public static CoolingVerdict of(List<StageVerdict> stages) {
        Verdict worst = stages.stream().map(StageVerdict::verdict).reduce(Verdict.WITHIN, Verdict::orWorse);
        return new CoolingVerdict(worst, List.copyOf(stages));
    }

    /** Whether some stage is still open or not begun. */
    public boolean waiting() {
        return stages.stream().anyMatch(StageVerdict::waiting);
    }

    /** Whether something is unjudged for another reason than that its time has not come. */
    public boolean unanswered() {
        return stages.stream().anyMatch(stage -> stage.verdict() == Verdict.UNJUDGED && !stage.waiting());
    }
}
