/** The words of screens, paper and verdicts, kept in one bundle so that they can be put into other languages. */
package trivet.words;
