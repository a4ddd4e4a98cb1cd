/** When food that cools will reach a temperature, with what certainty; informs a person and decides nothing. */
package trivet.forecast;
