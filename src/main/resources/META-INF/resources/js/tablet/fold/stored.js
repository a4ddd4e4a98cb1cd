import { derived } from "../../lib/canonical.js";
import { temperature } from "../../lib/decimal.js";
import { judgeRange } from "../../judge/range.js";
import { worse } from "../../judge/cooling.js";
import { say } from "/words.js";
import { over } from "../next.js";
import { answered, open } from "./matters.js";
import { corrected, foodOf, storageLimit } from "./measured.js";

/** The readings of a unit by this tablet, each with the worse of what was typed and of what a correction says. */
function readingsOf(unit, model) {
  const own = model.local.filter(record => record.kind === "unit-reading" && record.data.unit === unit.id && temperature(record.data.temperature))
    .map(record => ({ id: record.id, at: Date.parse(record.claimed_at), value: record.data.temperature.value, unit: record.data.temperature.unit }));
  const corrections = model.local.filter(record => record.kind === "correction"), range = model.kit.ranges[unit.limit];
  return own.flatMap(reading => {
    const as = [reading, ...corrected([reading], corrections)].map(one => ({ ...one, ...judgeRange(range, temperature(one)) }));
    return as.reduce((a, b) => worse(a.verdict, b.verdict) === a.verdict ? a : b);
  }).sort((a, b) => a.at - b.at);
}

/** The units with what this tablet read of them since: their open deviations, and each time they were found warm. */
export async function unitsOf(model) {
  const { kit } = model, matters = [...kit.unit_deviations.map(matter => structuredClone(matter))], warm = kit.unit_deviations.map(matter => ({ unit: kit.units.find(one => one.id === matter.subject), id: matter.id, since: matter.since, known: true })), readings = new Map();
  for (const unit of kit.units.filter(one => one.limit)) {
    const own = readingsOf(unit, model);
    readings.set(unit.id, own);
    let episode = unit.last?.verdict === "breached" ? kit.unit_deviations.find(matter => matter.subject === unit.id) ?? {} : null;
    for (const reading of own) {
      if (reading.verdict === "within") {
        if (episode?.local) episode.words = say("j_at", unit.name, episode.first, say("j_within_again_after_at_most_min", String(Math.ceil((reading.at - episode.since) / 60000))));
        episode = null;
      }
      if (reading.verdict !== "breached" || episode) continue;
      episode = { id: await derived(unit.id + "/deviation/" + reading.id), subject: unit.id, label: unit.name, limit: unit.limit, words: say("j_at", unit.name, reading.words, say("j_not_within_again_yet")), limit_words: "", state: "open",
        breach: true, since: reading.at, offers: ["probe-food", "move", "hold", "destroy"], answer: {}, local: true, first: reading.words };
      matters.push(episode);
      warm.push({ unit, id: episode.id, since: reading.at });
    }
  }
  for (const record of model.local.filter(one => one.kind === "deviation-answer")) {
    const matter = matters.find(one => one.id === record.data.deviation);
    if (matter) answered(matter, record.data);
  }
  return { matters, warm, readings };
}

/**
 * What the keeping of a batch says: its food since it was put away, what is kept hot, and its unit. A unit past the limit holds each batch in it until
 * the food of that batch was probed within since.
 */
export async function keeping(b, plan, units, kit) {
  const unit = kit.units.find(one => one.id === b.unit), range = storageLimit(kit, plan, unit?.limit || "chilled-storage");
  b.food = (b.food ?? []).map(reading => foodOf(reading, range, say("j_in_the_food")));
  b.kept_hot = (b.kept_hot ?? []).map(reading => foodOf(reading, plan.ranges["hot-holding"] ?? kit.ranges["hot-holding"], say("j_kept_hot")));
  const good = b.food.filter(reading => reading.verdict === "within"), probed = since => good.some(reading => reading.at >= since);
  const settled = new Set(b.holds.filter(hold => hold.food && probed(hold.since)).map(hold => hold.id));
  b.holds = b.holds.filter(hold => !settled.has(hold.id));
  b.deviations = b.deviations.filter(matter => !settled.has(matter.id));
  const warm = b.food.find(reading => reading.verdict === "breached"), cold = b.kept_hot.find(reading => reading.verdict === "breached");
  if (warm) await open(b, plan, "chilled-storage", warm);
  if (cold) await open(b, plan, "hot-holding", cold);
  if (b.life !== "stored" || !unit) return;
  for (const found of units.warm.filter(one => one.unit === unit && (!one.known || b.put_away_by) && one.since >= b.put_away && !probed(one.since))) {
    b.holds.push({ id: found.id, words: say("j_was_warm_probe_the_food_of", unit.name), since: found.since, food: true, local: true });
  }
  const past = (units.readings.get(unit.id) ?? []).filter(reading => reading.at >= b.put_away && reading.verdict === "within").map(reading => foodOf(reading, range, say("j_in", unit.name)))
    .find(reading => reading.verdict === "breached" && !probed(reading.at));
  if (past) await open(b, plan, "chilled-storage", { ...past, words: say("j_probe_the_food_of_this_batch", past.words) }, { food: true });
}

/** Whether anything that this tablet read of a batch's unit concerns the batch. */
export const touchedByUnit = (b, units) => !over(b) && b.life === "stored" && (units.readings.get(b.unit) ?? []).some(reading => reading.at >= b.put_away);
