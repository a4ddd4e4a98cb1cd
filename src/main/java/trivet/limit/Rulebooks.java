package trivet.limit;

import java.util.List;
import java.util.Optional;

/** The rulebooks that are shipped, in the order in which they are offered. */
public interface Rulebooks {

    /** All of them. */
    List<Rulebook> list();

    /** The one of that id. */
    Optional<Rulebook> find(String id);
}
