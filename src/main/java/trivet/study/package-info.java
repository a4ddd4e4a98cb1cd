/** The hazard plan of a product as its team writes it: the twelve steps of Codex CXC 1-1969, from the team to the signature. */
package trivet.study;
