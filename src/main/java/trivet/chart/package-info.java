/** Control charts of a process's own history; their limits are never food-safety limits. */
package trivet.chart;
