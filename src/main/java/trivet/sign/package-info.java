/** Signs in the records that an owner may look at once a week: questions, never accusations, and never shown to staff. */
package trivet.sign;
