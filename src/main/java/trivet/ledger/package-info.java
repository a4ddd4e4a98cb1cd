/**
 * Receiving records: every record is kept as the bytes that came, hashed, numbered in the order of receipt and never
 * changed. Other features read it through {@link trivet.ledger.Journal}.
 */
package trivet.ledger;
