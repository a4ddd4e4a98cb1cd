import { derived } from "../lib/canonical.js";
import { compare, temperature } from "../lib/decimal.js";
import { judgeCook } from "../judge/cook.js";
import { judgeCooling, saidOf, worse } from "../judge/cooling.js";
import { judgeRange } from "../judge/range.js";
import { say } from "/words.js";
import { planOf } from "./kit.js";
import { checksOf, aged } from "./checks.js";
import { nextStep, over } from "./next.js";

/**
 * What a batch is, by the kit and by what this tablet recorded since. The tablet betters nothing on a person's word alone: it ends no hold of the
 * kit that another person must end, and a correction that would turn a verdict for the better leaves the worse one standing.
 */
const MINUTE = 60000, NEEDED = ["what_happened", "cause", "control_restored", "disposition", "decided_by", "prevention"];
export { over };

function begun(record, kit) {
  const at = Date.parse(record.claimed_at), plan = kit.plans.find(one => one.product === record.data.product);
  return { id: record.batch, code: record.data.code, title: plan?.title ?? record.data.product, product: plan ? record.data.product : "unplanned", plan: plan?.ref ?? null, unplanned: !plan, line: record.data.line, trays: record.data.trays,
    pieces: record.data.pieces, by: record.person, started: at, life: record.data.oven ? "baking" : "begun", holds: [], use_by: null, unit: null, put_away: null, oven: null, first_oven: null, day_end: dayEnd(at, kit),
    cook_verdict: "unjudged", cook: [], backs: [], cooling_verdict: "unjudged", cooling: [], run: 1, reheat_offered: false, reheat_refused: "", hot: false, deviations: [], checks: [], told: [] };
}

/** The first moment after the business day of a moment, in the zone of the site. */
function dayEnd(at, kit) {
  const [hour, minute] = kit.site.day_ends.split(":").map(Number);
  const parts = Object.fromEntries(new Intl.DateTimeFormat("en-GB", { timeZone: kit.site.zone, hourCycle: "h23", hour: "2-digit", minute: "2-digit" }).formatToParts(new Date(at)).map(part => [part.type, part.value]));
  const into = (Number(parts.hour) * 60 + Number(parts.minute)) - (hour * 60 + minute);
  return Math.floor(at / MINUTE) * MINUTE + ((into < 0 ? 0 : 24 * 60) - into) * MINUTE;
}

const tell = {
  "back-in-oven": (b, at) => { b.backs.push(at); if (b.cooling.length === 0) b.oven = null; if (b.life === "cooling") b.life = "baking"; },
  "out-of-oven": (b, at) => { if (b.oven === null || b.cooling.length === 0) b.oven = at; b.first_oven ??= at; if (b.life === "begun" || b.life === "baking") b.life = "cooling"; },
  "cook-reading": (b, at, record, reading) => { if (reading) b.cook.push({ ...reading, held: record.data.held_seconds ?? null, piece: record.data.piece ?? null }); if (b.life === "begun") b.life = "baking"; },
  "cooling-reading": (b, at, record, reading) => { if (reading) b.cooling.push({ ...reading, piece: record.data.piece ?? null }); if (b.life === "begun" || b.life === "baking") b.life = "cooling"; },
  "food-reading": (b, at, record, reading) => { if (reading && b.put_away === null) tell["cooling-reading"](b, at, record, reading); else if (reading) (b.food ??= []).push(reading); },
  "reheat-begun": b => { b.run += 1; b.cooling = []; b.oven = null; b.reheating = { core: [] }; b.reheat_offered = false; },
  "reheat-reading": (b, at, record, reading) => { if (reading) (b.reheating ??= { core: [] }).core.push({ ...reading, held: record.data.held_seconds ?? null }); },
  "put-away": (b, at, record) => { b.put_away = at; b.put_away_by = record.id; b.unit = record.data.unit; b.use_by = record.data.use_by ?? null; if (!over(b)) b.life = "stored"; },
  gone: (b, at, record) => { b.left = (b.left ?? b.pieces) - (record.data.pieces ?? b.left ?? b.pieces); if (b.left <= 0) b.life = "gone"; },
  destroyed: b => { b.life = "destroyed"; },
  "struck-out": (b, at, record) => { if (b.cook.length + b.cooling.length > 0) b.holds.push({ id: record.id, words: say("j_struck_out_with_readings_a_second"), since: at }); else b.life = "struck out"; },
  held: (b, at, record) => { b.holds.push({ id: record.id, words: say("j_held_by", record.person, record.data.reason ?? "–"), since: at }); },
  split: b => { b.life = "split"; },
  "not-needed": (b, at, record) => { (b.not_needed ??= []).push(record.check); },
  "handed-over": (b, at, record) => { (b.handed ??= {})[record.check] = record.data.to; },
  "deviation-answer": (b, at, record) => { const matter = b.deviations.find(one => one.id === record.data.deviation); (b.answers ??= []).push(record.data); if (matter) answered(matter, record.data); },
  correction: (b, at, record) => { (b.corrections ??= []).push(record); }
};

function answered(matter, data) {
  matter.answer = { ...matter.answer, ...data };
  if (matter.state === "open" && NEEDED.every(name => matter.answer[name])) matter.state = "answered";
}

function take(b, record) {
  const at = Date.parse(record.claimed_at), t = temperature(record.data.temperature);
  const reading = t && { id: record.id, at, value: record.data.temperature.value, unit: record.data.temperature.unit, local: true };
  b.touched = true;
  b.told.push({ id: record.id, kind: record.kind, at, person: record.person, value: record.data.temperature?.value ?? null, unit: record.data.temperature?.unit ?? null, words: record.data.reason ?? "", item: record.data.item,
    good: record.data.good, state: record.state, probe: record.instrument });
  tell[record.kind]?.(b, at, record, reading);
}

/** The readings as they would stand with the corrections of this tablet. */
function corrected(list, corrections) {
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

function cookOf(readings, backs, plan) {
  const judged = readings.map(reading => reading.local || !reading.verdict ? { ...reading, ...judgeCook(plan.core?.rows, temperature(reading), reading.held === null ? null : String(reading.held)) } : reading);
  const attempt = reading => backs.filter(at => at <= reading.at).length;
  const attempts = Array.from({ length: backs.length + 1 }, (none, i) => judged.filter(reading => attempt(reading) === i));
  const verdictOf = list => {
    return [...grouped(list)].map(piece => piece.some(r => r.verdict === "breached") ? "breached" : piece.some(r => r.verdict === "within") ? "within" : piece[piece.length - 1].verdict).reduce(worse, list.length ? "within" : "unjudged");
  };
  const last = attempts.findLastIndex(list => list.length > 0), passed = last >= 0 && verdictOf(attempts[last]) === "within";
  const failed = judged.filter(reading => reading.verdict === "breached");
  const putRight = reading => { const i = attempt(reading); return i < backs.length && backs[i] <= reading.at + plan.bake_again_minutes * MINUTE && passed && last > i; };
  const uncorrected = failed.filter(reading => !putRight(reading));
  return { readings: judged, again: backs.length > 0 && attempts[backs.length].length === 0, verdict: uncorrected.length ? "breached" : last < 0 ? "unjudged" : verdictOf(attempts[last]), uncorrected, corrected: failed.filter(putRight) };
}

function grouped(list) {
  const groups = new Map();
  for (const reading of list) groups.set(reading.piece ?? 0, [...groups.get(reading.piece ?? 0) ?? [], reading]);
  return groups.values();
}

/** Every curve of the present run, the worst of them first; null while nothing is known of its cooling. */
function coolingOf(readings, oven, kit, now) {
  if (!kit.stages.length || (oven === null && !readings.length)) return null;
  const curves = readings.length ? [...grouped(readings)] : [[]];
  return curves.map(curve => {
    const points = curve.map(reading => ({ ...reading, temperature: temperature(reading) }));
    const run = judgeCooling(kit.stages, oven, points, now);
    return { ...run, origin: oven ?? points[0].at, readings: points.map(point => ({ ...point, ...saidOf(point, run) })) };
  }).reduce((a, b) => a.whole === b.whole || worse(a.whole, b.whole) === a.whole ? a : b);
}

/** Opens a deviation under the name that the service gives it too; failed readings of one control share the one that is open. */
async function open(b, plan, limit, reading, key = null) {
  if (key === null && b.deviations.some(matter => matter.limit === limit && matter.breach && matter.state !== "closed")) return;
  const id = await derived(b.id + "/" + (key ?? "deviation/" + reading.id));
  if (b.deviations.some(matter => matter.id === id)) return;
  const matter = { id, subject: b.id, label: b.code, limit, words: reading.words, limit_words: "", state: "open", breach: key === null, since: reading.at, offers: plan.offers[limit] ?? ["hold", "destroy"], answer: b.before?.[id]?.answer ?? {}, local: true };
  if (b.before?.[id]) matter.state = b.before[id].state;
  b.deviations.push(matter);
  b.holds.push({ id, words: reading.words, since: reading.at, local: true });
  for (const data of b.answers ?? []) if (data.deviation === id) answered(matter, data);
}

/** What is a deviation because nothing, or nothing that can be judged, was measured: looked at anew with what this tablet recorded since. */
async function unmeasured(b, plan, cook, now) {
  const earlier = b.deviations.filter(matter => !matter.breach && ["core-cook", "cooling"].includes(matter.limit));
  b.before = Object.fromEntries(earlier.map(matter => [matter.id, matter]));
  b.deviations = b.deviations.filter(matter => !earlier.includes(matter));
  b.holds = b.holds.filter(hold => !earlier.some(matter => matter.id === hold.id));
  if (b.life === "struck out") return;
  const begun = b.run > 1 || b.oven !== null || b.cooling.length > 0, ended = b.put_away !== null || now >= b.day_end;
  if (!cook.uncorrected.length && b.cook.length === 0 && (begun || ended)) await open(b, plan, "core-cook", { at: b.started, words: say("j_the_core_was_not_probed_a") }, "core");
  else if (!cook.uncorrected.length && b.cook.length > 0 && cook.verdict === "unjudged") await open(b, plan, "core-cook", { at: b.started, words: b.cook[b.cook.length - 1].words }, "core");
  if (b.hot || b.life === "destroyed") return;
  const silent = b.curve?.stages.find(stage => stage.verdict === "unjudged" && !(stage.waiting && !over(b)));
  if (silent) await open(b, plan, "cooling", { at: b.curve.origin, words: silent.words }, "cooling-" + b.run);
  else if (!b.curve && (ended || over(b))) await open(b, plan, "cooling", { at: b.started, words: say("j_no_cooling_was_recorded_a_missing") }, "cooling");
}

function storageLimit(kit, plan) {
  const law = kit.ranges["chilled-storage"] ?? null;
  return plan.storage && (!law?.maximum || compare(plan.storage.c, law.maximum.c) < 0) ? { minimum: null, maximum: plan.storage, operating: null, inForce: true, breach: "", words: plan.storage.words } : law;
}

/** What may be said of a batch: its verdicts, next step, checks, deviations and holds. */
async function judged(b, model) {
  const { kit, now } = model, plan = planOf(kit, b);
  if (b.touched) {
    const worst = { cook: null, cooling: null };
    let bettered = false;
    for (const corrections of b.corrections ? [[], b.corrections] : [[]]) {
      const cook = cookOf(corrected(b.cook, corrections), b.backs, plan), run = b.hot ? null : coolingOf(corrected(b.cooling, corrections), b.oven, kit, now);
      bettered ||= worst.cook !== null && (cook.verdict !== worse(worst.cook.verdict, cook.verdict) || (run && worst.cooling && run.whole !== worse(worst.cooling.whole, run.whole)));
      if (!worst.cook || worse(worst.cook.verdict, cook.verdict) !== worst.cook.verdict) worst.cook = cook;
      if (!worst.cooling || (run && worse(worst.cooling.whole, run.whole) !== worst.cooling.whole)) worst.cooling = run;
    }
    b.cook = worst.cook.readings;
    b.cook_verdict = worst.cook.verdict;
    b.baking_again = worst.cook.again;
    for (const reading of worst.cook.corrected) await drop(b, reading);
    if (worst.cook.uncorrected.length) await open(b, plan, "core-cook", { ...worst.cook.uncorrected[0], words: say("j_core", worst.cook.uncorrected[0].words) });
    b.curve = worst.cooling;
    if (b.curve) {
      b.cooling_verdict = b.curve.whole;
      const failed = b.curve.readings.find(reading => reading.verdict === "breached");
      if (failed) await open(b, plan, "cooling", failed);
    }
    await unmeasured(b, plan, worst.cook, now);
    for (const reading of b.food ?? []) Object.assign(reading, judgeRange(storageLimit(kit, plan), temperature(reading)));
    const warm = (b.food ?? []).find(reading => reading.verdict === "breached");
    if (warm) await open(b, plan, "chilled-storage", warm);
    const bad = b.told.find(told => told.kind === "plan-check" && told.good === false);
    if (bad && !b.told.some(told => told.kind === "plan-check" && told.item === bad.item && told.good && told.at > bad.at)) b.holds.push({ id: bad.id, words: say("j_not_as_it_should_be", bad.words), since: bad.at });
    if (over(b)) b.holds = [];
    Object.assign(b, bettered && !over(b) ? { act: "accept", next: say("j_a_late_record_or_a_correction") } : nextStep(b, plan));
    b.checks = b.hot ? b.checks.map(check => aged(check, now)) : await checksOf(b, plan, b.curve, now);
  } else {
    b.curve = b.hot || over(b) ? null : coolingOf(b.cooling, b.oven, kit, now);
    b.checks = b.checks.map(check => aged(check, now));
  }
  return b;
}

/** A core that failed and was put right at the step is no open matter any more. */
async function drop(b, reading) {
  const id = await derived(b.id + "/deviation/" + reading.id);
  b.deviations = b.deviations.filter(matter => matter.id !== id);
  b.holds = b.holds.filter(hold => hold.id !== id);
}

/** Every batch that this tablet knows, the kit's and its own, judged as of now. */
export async function batches(model) {
  const all = new Map(model.kit.batches.map(batch => [batch.id, structuredClone(batch)]));
  for (const record of model.local) {
    if (record.kind === "batch-started" && !all.has(record.batch)) all.set(record.batch, begun(record, model.kit));
    const batch = all.get(record.batch);
    if (batch) take(batch, record);
  }
  return Promise.all([...all.values()].map(batch => judged(batch, model)));
}
