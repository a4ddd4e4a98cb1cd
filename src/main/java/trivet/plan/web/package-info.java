/** The owner's page of plans. */
package trivet.plan.web;
