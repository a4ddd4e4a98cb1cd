/** What the site works with: ovens, fridges and other units, probes, and tablets with a credential of their own. */
package trivet.device;

