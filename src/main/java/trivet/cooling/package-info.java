/**
 * Verdicts on measured curves: the staged cooling of a batch and the core temperatures of its pieces. Exact decimals;
 * no verdict comes from a line drawn between readings.
 */
package trivet.cooling;
