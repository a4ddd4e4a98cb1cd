/** Time out of temperature control, from readings at any times, with what is unknown kept apart. */
package trivet.excursion;
