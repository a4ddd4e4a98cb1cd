/** Keeps the alarms in the database. */
package trivet.alarm.store;
