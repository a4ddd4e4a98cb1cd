/** How a record of a plan is written as text: which kinds of values it has, and the tree of them, in the order of its components. */
package trivet.form;
