package trivet.hazard;

import java.util.Locale;
import java.util.Optional;
import trivet.words.Words;

/**
 * A way to weigh a hazard by likelihood and severity.
 *
 * <p>{@link #EU_NOTICE_2022}: Commission Notice 2022/C 355/01, semi-quantitative risk evaluation: probability P and effect G from 1 to 4, risk
 * level P + G − 1, as read in a rendering of the Notice; the likelihood is judged with the earlier measures in place. {@link #SIMPLE}: three by
 * three (common practice, no source): significant from the product 3 on, and always at the highest severity; the likelihood is judged without
 * the control, as Codex defines a significant hazard.
 */
public enum RiskMatrix {
    EU_NOTICE_2022(4),
    SIMPLE(3);

    private final int highest;

    RiskMatrix(int highest) {
        this.highest = highest;
    }

    /** Where a level leads to. */
    public enum Route {
        /** Good hygiene practice is enough. */
        GHP,
        /** Possibly an operational prerequisite programme: are the general measures enough? */
        GHP_OR_OPRP,
        /** To the determination of critical control points. */
        CONTROL_POINT;

        /** The word in files and answers. */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** The matrix of an id. */
    public static Optional<RiskMatrix> find(String id) {
        return java.util.Arrays.stream(values()).filter(matrix -> matrix.id().equals(id)).findFirst();
    }

    /** The id. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The highest likelihood and severity; the lowest is 1. */
    public int highest() {
        return highest;
    }

    /** The level of a likelihood and a severity; refuses one outside the matrix. */
    public int level(int likelihood, int severity) {
        if (likelihood < 1 || likelihood > highest || severity < 1 || severity > highest) {
            throw new IllegalArgumentException(Words.say("j_likelihood_and_severity_are_whole", highest));
        }
        return this == EU_NOTICE_2022 ? likelihood + severity - 1 : likelihood * severity;
    }

    /** Where a level leads to. */
    public Route route(int likelihood, int severity) {
        int level = level(likelihood, severity);
        if (this == SIMPLE) {
            return level >= 3 || severity == highest ? Route.CONTROL_POINT : Route.GHP;
        }
        return level <= 2 ? Route.GHP : level <= 4 ? Route.GHP_OR_OPRP : Route.CONTROL_POINT;
    }

    /** Whether a hazard of this weight is significant, so that it needs a control of its own. */
    public boolean significant(int likelihood, int severity) {
        return route(likelihood, severity) != Route.GHP;
    }
}
