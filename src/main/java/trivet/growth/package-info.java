/** How much a bug would have grown over a temperature curve if it was there, and what that means for a shelf life. */
package trivet.growth;
