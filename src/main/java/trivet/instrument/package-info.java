/** Thermometers: boiling point, uncertainty, and the probability that a value conforms. */
package trivet.instrument;
