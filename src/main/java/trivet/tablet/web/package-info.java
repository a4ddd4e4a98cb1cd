/** The screens of the bakery's day; they read the daybook and write by the API of records alone. */
package trivet.tablet.web;
