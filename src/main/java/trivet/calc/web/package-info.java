/** The pure calculations as an API: they store nothing and need no sign-in. */
package trivet.calc.web;
