package trivet.knowledge;

/** Something that rests on a source: the source, its standing (law, guidance or practice), and whether it was read ("true") or is from memory. */
public interface Sourced {

    /** The id. */
    String id();

    /** The title. */
    String title();

    /** The source. */
    String source();

    /** The standing: law, guidance or practice. */
    String standing();

    /** "true" when the source was read, "false" when the row is from memory. */
    String read();
}
