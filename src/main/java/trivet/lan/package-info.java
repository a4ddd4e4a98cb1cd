/** The bakery's network: the name and address by which tablets reach the service, and how a tablet joins. */
package trivet.lan;
