package trivet.plan;

/** How many batches of a product are under way, which a new version would reach. */
public interface UnderWay {
    /** The number of batches that are not over. */
    int count(String product);
}
