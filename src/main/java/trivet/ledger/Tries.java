package trivet.ledger;

import java.time.Instant;
import java.util.Optional;

/** How often a secret was wrong since it was last right; outlasts a restart. */
public interface Tries {

    /** Wrong tries in a row, and the last of them. */
    record Wrong(int count, Instant last) {
    }

    /** The wrong tries of a name; empty where the last one was right or there was none. */
    Optional<Wrong> wrong(String name);

    /** Counts one more. */
    void failed(String name);

    /** It was right: forgets the wrong ones. */
    void succeeded(String name);
}
