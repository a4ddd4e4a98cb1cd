/** Records of a plan as YAML: read with every problem by its line, written always in the same way. */
package trivet.form.file;
