/** The owner's weekly look: signs in the records that ask a question, never an accusation. */
package trivet.week;
