/** The knowledge base in YAML files. */
package trivet.knowledge.file;
