package trivet.flow;

/**
 * What a kind of step means for the flow.
 *
 * @param begins whether a flow may begin with it, such as receiving
 * @param ends whether a flow may end with it, such as selling or throwing away
 * @param makesSafe whether the food is ready to eat after it, such as baking
 */
public record Traits(boolean begins, boolean ends, boolean makesSafe) {

    /** A step in the middle. */
    public static final Traits MIDDLE = new Traits(false, false, false);
}
