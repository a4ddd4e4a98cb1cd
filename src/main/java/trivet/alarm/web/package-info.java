/** The wall sheet, the owner's settings for messages, and the word that a matter was seen. */
package trivet.alarm.web;
