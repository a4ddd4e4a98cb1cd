/** Heat: how many minutes at a reference temperature a core temperature curve is worth, and the kill that stands for. Pages of publications are from memory. */
package trivet.lethality;
