/** Problems told to callers of the API in the form of RFC 9457. */
package trivet.measure.web;
