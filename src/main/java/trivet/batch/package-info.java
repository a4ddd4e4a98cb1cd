/** A batch and where it is in its life, as its records tell. */
package trivet.batch;
