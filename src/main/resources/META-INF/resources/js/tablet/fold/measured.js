import { compare, impossible, temperature } from "../../lib/decimal.js";
import { judgeCook } from "../../judge/cook.js";
import { judgeCooling, saidOf, worse } from "../../judge/cooling.js";
import { judgeRange } from "../../judge/range.js";
import { say, shown } from "/words.js";

const MINUTE = 60000;
const text = reading => temperature(reading).text;

/** The readings as they would stand with the corrections of this tablet. */
export function corrected(list, corrections) {
  return list.flatMap(reading => {
    let next = reading;
    for (const one of corrections.filter(correction => correction.data.of === reading.id)) {
      if (one.data.void) return [];
      const to = one.data.data?.temperature;
      next = { ...next, ...(to ? { value: to.value, unit: to.unit, local: true } : {}), ...(one.data.claimed_at ? { at: Date.parse(one.data.claimed_at) } : {}) };
    }
    return [next];
  });
}

/** A pass by a probe that is not to be trusted counts as unjudged; a failure stays one. */
const trusted = (reading, judged) => reading.doubt && judged.verdict === "within" ? { verdict: "unjudged", words: text(reading) + ". " + reading.doubt } : judged;

/** The core readings after a bake or a reheat, told apart by the returns to the oven, with the verdict on all. */
export function cookOf(readings, backs, rows, againMinutes) {
  const judged = readings.map(reading => reading.local || !reading.verdict ? { ...reading, ...trusted(reading, judgeCook(rows, temperature(reading), reading.held === null ? null : String(reading.held))) } : reading);
  const attempt = reading => backs.filter(at => at <= reading.at).length;
  const attempts = Array.from({ length: backs.length + 1 }, (none, i) => judged.filter(reading => attempt(reading) === i));
  const verdictOf = list => [...grouped(list)].map(piece => piece.some(r => r.verdict === "breached") ? "breached" : piece.some(r => r.verdict === "within") ? "within" : piece[piece.length - 1].verdict).reduce(worse, list.length ? "within" : "unjudged");
  const last = attempts.findLastIndex(list => list.length > 0), passed = last >= 0 && verdictOf(attempts[last]) === "within";
  const failed = judged.filter(reading => reading.verdict === "breached");
  const putRight = reading => { const i = attempt(reading); return i < backs.length && backs[i] <= reading.at + againMinutes * MINUTE && passed && last > i; };
  const uncorrected = failed.filter(reading => !putRight(reading));
  return { readings: judged, again: backs.length > 0 && attempts[backs.length].length === 0, verdict: uncorrected.length ? "breached" : last < 0 ? "unjudged" : verdictOf(attempts[last]), uncorrected, corrected: failed.filter(putRight) };
}

/** The readings of each piece told apart. */
function grouped(list) {
  const groups = new Map();
  for (const reading of list) groups.set(reading.piece ?? 0, [...groups.get(reading.piece ?? 0) ?? [], reading]);
  return groups.values();
}

const worstOf = (runs, of = run => run.whole) => runs.reduce((a, b) => of(a) === of(b) || worse(of(a), of(b)) === of(a) ? a : b);

/** Every curve of the present run, the worst of them first; with readings of a doubted probe each is judged with and without them. Null while nothing is known of its cooling. */
export function coolingOf(readings, oven, kit, now) {
  if (!kit.stages.length || (oven === null && !readings.length)) return null;
  const curves = readings.length ? [...grouped(readings)] : [[]];
  const all = curves.map(curve => {
    const points = curve.map(reading => ({ ...reading, temperature: temperature(reading), doubt: reading.doubt || (oven !== null && reading.at < oven ? say("j_before_it_was_out_of_the_oven") : "") })), possible = points.filter(point => !impossible(point.temperature));
    const run = worstOf((possible.some(point => point.doubt) ? [possible, possible.filter(point => !point.doubt)] : [possible]).map(list => judgeCooling(kit.stages, oven, list, now)));
    return { ...run, origin: oven ?? points[0].at, readings: points.map(point => ({ ...point, ...said(point, run) })) };
  });
  return { ...worstOf(all), all };
}

/**
 * Why a batch may not be reheated at a moment, as a sentence; empty when it may: once, while the plan's minutes since the cooling clock began allow it,
 * and never after a missed last stage or when the times are not known.
 *
 * @param curve the run that would end, judged as of the moment; null where nothing is known of it
 */
export function reheatRefusal(plan, curve, earlier, at) {
  if (!curve) return say("j_nothing_is_known_of_its_cooling");
  if (plan.reheat_minutes === 0) return say("j_the_plan_allows_no_reheat");
  if (earlier > 0) return say("j_it_was_reheated_once_already");
  const clocks = curve.all.flatMap(run => run.stages.map(stage => stage.clock).filter(clock => clock !== null));
  if (!clocks.length) return say("j_it_is_not_known_when_the");
  if (at > Math.min(...clocks) + plan.reheat_minutes * MINUTE) return say("j_more_than_the_plan_s_min", plan.reheat_minutes);
  const missed = curve.all.map(run => run.stages[run.stages.length - 1]).some(last => last.verdict === "breached" || (last.verdict === "unjudged" && !last.waiting));
  return missed ? say("j_the_last_stage_of_the_cooling") : "";
}

function said(point, run) {
  if (impossible(point.temperature)) return { verdict: "unjudged", words: say("j_no_food_has_this_temperature_it_2", point.temperature.text) };
  const one = saidOf(point, run);
  return point.doubt && one.verdict !== "breached" ? { verdict: "unjudged", words: shown(point.temperature.text) + ". " + point.doubt } : one;
}

/** A reheat with its core readings judged, and those that failed: short of the rows, or hot enough too late. */
export function reheatOf(reheat, limit, againMinutes) {
  const core = cookOf(reheat.core, reheat.backs, limit?.rows, againMinutes), minutes = limit?.within_minutes;
  const late = minutes == null ? [] : core.readings.filter(reading => reading.verdict === "within" && reading.at > reheat.begun + Number(minutes) * MINUTE)
    .map(reading => ({ ...reading, verdict: "breached", words: say("j_hot_enough_but_later_than_min", text(reading), minutes) }));
  return { ...core, failed: [...core.uncorrected, ...late] };
}

/** A reading of food in a fridge or kept hot, judged by a range; `where` it was taken is part of the sentence. */
export function foodOf(reading, range, where) {
  const t = temperature(reading), judged = trusted(reading, judgeRange(range, t));
  return { ...reading, ...judged, ...(judged.verdict === "breached" ? { words: say("j_the_limit_is", t.text, where, range.words, range.breach) } : {}) };
}

/** The stricter of the law's range and a bound that the plan's use-by rests on. */
export function storageLimit(kit, plan, name = "chilled-storage") {
  const law = plan.ranges[name] ?? kit.ranges[name] ?? null;
  return name === "chilled-storage" && plan.storage && (!law?.inForce || !law.maximum || compare(plan.storage.c, law.maximum.c) < 0)
    ? { minimum: law?.minimum ?? null, maximum: plan.storage, operating: null, inForce: true, breach: say("j_past_good_practice"), words: plan.storage.words } : law;
}
