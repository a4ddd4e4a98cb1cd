/** What a batch that cools is likely to do next; informs a person, and decides nothing. */
package trivet.outlook;
