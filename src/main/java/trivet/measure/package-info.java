/** Measured quantities as they were typed. */
package trivet.measure;
