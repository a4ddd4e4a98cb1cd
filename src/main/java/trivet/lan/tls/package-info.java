/** The certificates of the bakery's own authority. */
package trivet.lan.tls;
