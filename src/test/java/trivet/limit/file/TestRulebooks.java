package trivet.limit.file;

import java.util.List;
import trivet.limit.Rulebook;

/** The shipped rulebooks, for tests that need no service. */
public final class TestRulebooks {

    private static final ShippedRulebooks ALL = new ShippedRulebooks();

    private TestRulebooks() {
    }

    /** All of them. */
    public static List<Rulebook> list() {
        return ALL.list();
    }

    /** The one of that id. */
    public static Rulebook find(String id) {
        return ALL.find(id).orElseThrow();
    }
}
