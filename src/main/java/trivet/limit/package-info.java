/**
 * Limits and how one value is judged by one: the numbers of a jurisdiction (a <em>rulebook</em>), each with its unit,
 * source and standing, and the verdict on a reading. Limits defer to local law and to a competent person.
 */
package trivet.limit;
