import { say } from "/words.js";
import { worse } from "../judge/cooling.js";
import { aged, checksOf } from "./checks.js";
import { coolingOf, cookOf, corrected, reheatOf, reheatRefusal } from "./fold/measured.js";
import { drop, open, reheated, unmeasured } from "./fold/matters.js";
import { keeping, touchedByUnit, unitsOf } from "./fold/stored.js";
import { begun, parted, take } from "./fold/told.js";
import { planOf } from "./kit.js";
import { nextStep, over } from "./next.js";

/**
 * What a batch is, by the kit and by what this tablet recorded since. The tablet betters nothing on a person's word alone: it ends no hold of the
 * kit that another person must end, and a correction that would turn a verdict for the better leaves the worse one standing.
 */
export { over };

/** The core and the cooling with and without the corrections that wait: of each the worse, and whether a correction would better one. */
function measured(b, plan, { kit, now }) {
  const worst = { cook: null, cooling: null };
  let bettered = false;
  for (const corrections of b.corrections ? [[], b.corrections] : [[]]) {
    const cook = cookOf(corrected(b.cook, corrections), b.backs, plan.core?.rows, plan.bake_again_minutes), run = b.hot ? null : coolingOf(corrected(b.cooling, corrections), b.oven, kit, now);
    bettered ||= worst.cook !== null && (cook.verdict !== worse(worst.cook.verdict, cook.verdict) || (run && worst.cooling && run.whole !== worse(worst.cooling.whole, run.whole)));
    if (!worst.cook || worse(worst.cook.verdict, cook.verdict) !== worst.cook.verdict) worst.cook = cook;
    if (!worst.cooling || (run && worse(worst.cooling.whole, run.whole) !== worst.cooling.whole)) worst.cooling = run;
  }
  return { ...worst, bettered };
}

/** What is noted of a control by the plan's own criterion, and was not good. */
function owned(b, plan) {
  for (const own of plan.own) {
    const seen = b.told.filter(told => told.kind === "plan-check" && told.item === own.id), bad = seen.find(told => told.good === false), last = seen[seen.length - 1];
    if (bad && !(last.good && own.before)) b.holds.push({ id: bad.id, words: say("j_not_as_it_should_be", bad.words), since: bad.at });
  }
}

/** What may be said of a batch: its verdicts, next step, checks, deviations and holds. */
async function judged(b, model, units) {
  const { kit, now } = model, plan = planOf(kit, b);
  if (!b.touched && !touchedByUnit(b, units)) {
    b.curve = b.hot || over(b) ? null : b.reheat ? coolingOf(b.reheat.before.cooling, b.reheat.before.oven, kit, b.reheat.begun) : coolingOf(b.cooling, b.oven, kit, now);
    b.checks = b.checks.map(check => aged(check, now));
    return b;
  }
  const { cook, cooling, bettered } = measured(b, plan, model);
  const reheats = [...b.reheats ?? [], ...b.reheat ? [b.reheat] : []];
  for (const reheat of reheats) if (reheat.before) reheat.before.curve = coolingOf(reheat.before.cooling, reheat.before.oven, kit, reheat.begun);
  const curve = cooling ?? reheats[reheats.length - 1]?.before?.curve ?? null;
  Object.assign(b, { cook: cook.readings, cook_verdict: cook.verdict, baking_again: cook.again, curve, cooling_verdict: b.hot ? b.cooling_verdict : curve?.whole ?? "unjudged" });
  for (const reading of cook.corrected) await drop(b, reading);
  if (cook.uncorrected.length) await open(b, plan, "core-cook", { ...cook.uncorrected[0], words: say("j_core", cook.uncorrected[0].words) });
  const slow = cooling?.readings.find(reading => reading.verdict === "breached");
  if (slow) await open(b, plan, "cooling", slow);
  await unmeasured(b, plan, { cook, cooling, reheats }, now);
  for (const reheat of reheats) {
    reheat.judged = reheatOf(reheat, plan.reheat, plan.bake_again_minutes);
    await reheated(b, plan, reheat);
  }
  b.reheat_refused = reheatRefusal(plan, b.curve, b.run - 1, now);
  b.reheat_offered = !b.hot && b.curve !== null && !over(b) && b.put_away === null && b.cooling_verdict !== "within" && b.reheat_refused === "";
  await keeping(b, plan, units, kit);
  owned(b, plan);
  if (over(b)) b.holds = [];
  if (b.life === "split") b.deviations = [];
  Object.assign(b, bettered && !over(b) ? { act: "accept", next: say("j_a_late_record_or_a_correction") } : nextStep(b));
  b.checks = b.hot && !b.split_at ? b.checks.map(check => aged(check, now)) : await checksOf(b, plan, curve && curve.all[curve.all.length - 1], now);
  return b;
}

/** A batch of the kit as the fold goes on with it: while it is being reheated, its last run of cooling has ended and the next has not begun. */
function taken(batch) {
  const b = structuredClone(batch);
  return b.reheat ? { ...b, run: b.reheat.number + 1, cooling: [], oven: null, reheat: { ...b.reheat, before: { cooling: b.cooling, oven: b.reheat.oven_before } } } : b;
}

/** Every batch and unit that this tablet knows, the kit's and its own, judged as of now. */
export async function known(model) {
  const all = new Map(model.kit.batches.map(batch => [batch.id, taken(batch)])), units = await unitsOf(model);
  for (const record of model.local) {
    if (record.kind === "batch-started" && !all.has(record.batch)) all.set(record.batch, begun(record, model.kit));
    const batch = all.get(record.batch);
    if (batch && record.kind === "split" && !over(batch)) for (const part of record.data.parts) if (!all.has(part.batch)) all.set(part.batch, await parted(batch, record, part));
    if (batch) take(batch, record, model);
  }
  return { batches: await Promise.all([...all.values()].map(batch => judged(batch, model, units))), units };
}

/** Every batch that this tablet knows, judged as of now. */
export const batches = async model => (await known(model)).batches;
