/** The flow diagram of a product: its steps and what leads to them, what is wrong with it, and the ways to change it. */
package trivet.flow;
