/** Plans of products: the steps, the critical control points and their checks, as an owner approved them. */
package trivet.plan;

