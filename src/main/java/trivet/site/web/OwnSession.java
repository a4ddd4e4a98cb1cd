package trivet.site.web;

import java.util.Set;

/** The records by which a person decides, so that they need that person's own session and no tablet may send them for somebody. */
public final class OwnSession {

    private static final Set<String> KINDS = Set.of("released", "accepted", "picked", "day-reviewed", "deviation-verified", "strike-out-agreed");

    private OwnSession() {
    }

    /** Whether a kind of record needs it. */
    public static boolean needed(String kind) {
        return KINDS.contains(kind);
    }
}
