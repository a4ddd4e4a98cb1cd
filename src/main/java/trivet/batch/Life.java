package trivet.batch;

/** Where a batch is in its life; being on hold is a mark beside it. */
public enum Life {
    BEGUN, BAKING, COOLING, STORED, SPLIT, GONE, DESTROYED, STRUCK_OUT;

    /** Whether nothing more is expected of the batch. */
    public boolean over() {
        return compareTo(SPLIT) >= 0;
    }

    /** The word on screen and paper. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    }
}
