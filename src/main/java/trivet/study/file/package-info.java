/** Hazard plans in YAML files. */
package trivet.study.file;
