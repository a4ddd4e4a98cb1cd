/** The API by which tablets send records. */
package trivet.ledger.web;
