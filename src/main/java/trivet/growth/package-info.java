/** How much a bug would have grown over a temperature curve if it was there, and what that means for a shelf life. Pages of publications are from memory. */
package trivet.growth;
