/** What an inspector is shown: curves, and the records of a month. */
package trivet.report;

