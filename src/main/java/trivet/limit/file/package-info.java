/** Reading rulebooks from YAML files; every problem of a file is reported with its line, not the first only. */
package trivet.limit.file;
