package trivet.ledger;

/** Says at receipt what a record means; what it says is kept with the record and never said anew. */
public interface Judge {

    /** The verdict on a record that is about to be kept. */
    Fields verdict(Entry received);
}
