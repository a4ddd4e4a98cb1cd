import { temperature } from "../lib/decimal.js";
import { judgeRange } from "../judge/range.js";
import { batches } from "./fold.js";
import { model } from "./kit.js";
import { say } from "/words.js";

/** What this tablet itself says of a record that it has just kept; null where it cannot know. */
export async function ownVerdict(record) {
  const known = await model();
  if (!known) return null;
  const t = temperature(record.data.temperature);
  if (record.kind === "unit-reading" && t) {
    const unit = known.kit.units.find(one => one.id === record.data.unit);
    return unit?.limit ? judgeRange(known.kit.ranges[unit.limit], t) : null;
  }
  if (record.kind === "probe-check" && t && record.data.altitude_m === undefined && record.data.pressure_hpa === undefined) return judgeRange(known.kit.ranges["probe-" + record.data.method], t);
  if (!t || !record.batch) return null;
  const batch = (await batches(known)).find(one => one.id === record.batch);
  if (!batch) return { verdict: "unjudged", words: say("j_the_batch_of_this_reading_has") };
  if (record.kind === "cook-reading") return batch.cook.find(reading => reading.id === record.id) ?? null;
  if (record.kind === "cooling-reading" || (record.kind === "food-reading" && batch.put_away === null)) {
    const reading = batch.curve?.readings.find(one => one.id === record.id);
    return reading ? { verdict: batch.curve.whole, words: reading.words } : null;
  }
  if (record.kind === "food-reading") return batch.food?.find(reading => reading.id === record.id) ?? null;
  if (record.kind === "hot-hold-reading") return batch.kept_hot?.find(reading => reading.id === record.id) ?? null;
  if (record.kind === "reheat-reading") return [...batch.reheats ?? [], ...batch.reheat ? [batch.reheat] : []].flatMap(reheat => [...reheat.judged.failed, ...reheat.judged.readings]).find(reading => reading.id === record.id) ?? null;
  return null;
}
