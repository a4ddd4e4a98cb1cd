/** Calculations for people who only came to calculate: pasted readings, and a picture of them. */
package trivet.calc;
