/** Words for templates and for the scripts of the screens. */
package trivet.words.web;
