/** Keeping records in SQLite: one writer that groups waiting appends, and readers beside it. */
package trivet.ledger.store;
