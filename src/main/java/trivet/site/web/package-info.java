/** The door: who may open what, signing in, the first start, and the owner's screens. */
package trivet.site.web;
