/** What is known of ingredients, kinds of step, equipment, hazards, allergens and prerequisite programmes, each row with its source; it proposes and never decides. */
package trivet.knowledge;
