/** Start, end and wiring of the service. */
package trivet.shell;
