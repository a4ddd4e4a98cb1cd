/** The invented bakery of the demo, with its own folder; a real site never contains it. */
package trivet.demo;
