package trivet.instrument;

/** A budget of standard uncertainties, added as squares (JCGM 100:2008). */
public final class Uncertainty {

    private double squares;

    /** Adds a standard uncertainty. */
    public Uncertainty add(double standard) {
        squares += standard * standard;
        return this;
    }

    /** Adds a half-width within which every value is as likely: divided by √3. */
    public Uncertainty addHalfWidth(double halfWidth) {
        return add(halfWidth / Math.sqrt(3));
    }

    /** Adds the resolution of a display: divided by √12. */
    public Uncertainty addResolution(double resolution) {
        return add(resolution / Math.sqrt(12));
    }

    /** Adds the expanded uncertainty of a reference, divided by its coverage factor. */
    public Uncertainty addExpanded(double expanded, double coverage) {
        return add(expanded / coverage);
    }

    /** The combined standard uncertainty. */
    public double standard() {
        return Math.sqrt(squares);
    }
}
