/** How a tablet joins: over plain http only what explains it, over https the joining itself and a test of what works. */
package trivet.lan.web;
