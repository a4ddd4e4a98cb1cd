/** The site: where it is, when its business day ends, and which rulebook its owner confirmed. */
package trivet.site;
