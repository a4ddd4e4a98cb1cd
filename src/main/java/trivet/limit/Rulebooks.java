package trivet.limit;

import java.util.List;
import java.util.Optional;

/** The rulebooks that are shipped, in the order in which they are offered. */
public interface Rulebooks {

    /** All of them. */
    List<Rulebook> list();

    /** The one of that id. */
    Optional<Rulebook> find(String id);

    /** The whole text of the file of that id, to be frozen when it is confirmed. */
    String text(String id);

    /** The rulebook of a text that was frozen. */
    Rulebook read(String text);
}
