/** Tells the owner of open matters by mail and by web hook. */
package trivet.alarm.send;
