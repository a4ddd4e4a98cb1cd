/** The people of the site: who they are, what they may do, and how they prove it with a PIN or the owner's password. */
package trivet.people;
