package trivet.ledger.web;

/** Who may send which record. */
public interface Permits {

    /** The tablet whose credential came with the request. */
    String device();

    /** Refuses, with a sentence, a record that needs the person's own session and comes without it. */
    void check(byte[] body);
}
