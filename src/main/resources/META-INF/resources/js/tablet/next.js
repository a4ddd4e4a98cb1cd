import { say } from "/words.js";

const OVER = ["gone", "destroyed", "struck out", "split"];
/** Whether a batch has come to its end. */
export const over = batch => OVER.includes(batch.life);

/** The one thing to do next with a batch, in the service's own words. */
export function nextStep(b) {
  const as = (act, key, ...values) => ({ act, next: say(key, ...values) });
  const isOpen = b.deviations.some(matter => matter.state === "open");
  const begun = b.run > 1 || b.oven !== null || b.cooling.length > 0;
  if (over(b)) return isOpen ? as("deviation", "j_a_deviation_of_this_batch_is") : as("none", "j_nothing_more_to_do");
  if (b.cook_verdict === "breached" && !begun) return b.baking_again ? as("core", "j_baking_again_probe_when_done") : as("back-in-oven", "j_below_the_limit_back_in_the");
  if (b.reheat) return reheating(b.reheat, as);
  const food = b.holds.find(hold => hold.food);
  if (food) return { act: "food", next: food.words };
  if (isOpen) return as("deviation", "j_on_hold_set_it_apart_and");
  if (b.holds.length) return as("deviation", "j_on_hold_a_second_person_decides");
  if (b.life === "stored") return as("gone", "j_put_away_record_when_it_is");
  if (b.cook.length === 0 || b.cook_verdict !== "within") return as("core", "j_probe_the_core_of_the_thickest");
  if (b.hot) return as("hot", "j_kept_hot_probe_it_when_the");
  if (!begun) return as("out-of-oven", "j_baked_through_take_it_out_and");
  const waiting = b.curve?.stages.find(stage => stage.waiting);
  if (waiting) return as("cooling", "j_cooling_now", waiting.words);
  return as("put-away", "j_cooled_in_time_put_it_away");
}

function reheating(reheat, as) {
  if (!reheat.core.length) return as("reheat", "j_reheating_probe_the_core_when_it");
  return reheat.judged.verdict === "within" ? as("out-of-oven", "j_reheated_take_it_out_and_start") : as("back-in-oven", "j_below_the_reheat_limit_back_in");
}
