/** The flow diagram drawn: a layered layout by a library, and its SVG. */
package trivet.flow.draw;
