package trivet.limit;

import java.util.Optional;

/**
 * What a number rests on: its standing, its source (act and section), and whether that source was read or the number is
 * from memory.
 *
 * @param adopted whether the owner took this number over where the law gives none; always true for a number of the law
 * @param overriddenBecause the owner's reason, where a site replaced the shipped number
 */
public record Basis(Standing standing, String source, boolean read, boolean adopted, Optional<String> overriddenBecause) {

    /** The basis of a number as shipped: law is in force, anything else is a suggestion until it is adopted. */
    public static Basis shipped(Standing standing, String source, boolean read) {
        return new Basis(standing, source, read, standing == Standing.LAW, Optional.empty());
    }

    /** Whether the law gives no number here, so that this one is a suggestion for the owner to adopt or to replace. */
    public boolean suggestion() {
        return standing != Standing.LAW;
    }

    /** The same number, taken over by the owner. */
    public Basis adoptedByOwner() {
        return new Basis(standing, source, read, true, overriddenBecause);
    }

    /** The basis of the owner's own number, which judges from its confirmation on. */
    public static Basis override(Standing standing, String source, String reason) {
        return new Basis(standing, source, true, true, Optional.of(reason));
    }
}
