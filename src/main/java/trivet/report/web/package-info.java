/** The month as a page, as a tagged PDF and as CSV. */
package trivet.report.web;

