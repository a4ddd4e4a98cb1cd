/** Readings, the verdict on each control of a batch, and when its checks are due. */
package trivet.check;

