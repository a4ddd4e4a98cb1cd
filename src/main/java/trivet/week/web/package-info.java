/** The owner's page of the weekly look. */
package trivet.week.web;
