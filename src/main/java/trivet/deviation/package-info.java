/**
 * Deviations, holds and releases: what went wrong or could not be judged, what was done about it, and what that means for
 * a batch. Everything is derived from the records each time it is read; nothing here is stored.
 */
package trivet.deviation;

