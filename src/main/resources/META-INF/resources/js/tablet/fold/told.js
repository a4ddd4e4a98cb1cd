import { derived } from "../../lib/canonical.js";
import { temperature } from "../../lib/decimal.js";
import { say } from "/words.js";
import { over } from "../next.js";
import { answered } from "./matters.js";
import { doubtOf } from "./probes.js";
import { dayEnd } from "./days.js";

/** What one record of this tablet tells of its batch. */
const tell = {
  "back-in-oven": (b, at) => { if (b.reheat) { b.reheat.backs.push(at); return; } b.backs.push(at); if (b.cooling.length === 0) b.oven = null; if (b.life === "cooling") b.life = "baking"; },
  "out-of-oven": (b, at) => { if (b.reheat) { b.reheat.out = true; (b.reheats ??= []).push(b.reheat); b.reheat = null; } if (b.oven === null || b.cooling.length === 0) b.oven = at; b.first_oven ??= at; if (b.life === "begun" || b.life === "baking") b.life = "cooling"; },
  "cook-reading": (b, at, record, reading) => { if (reading) b.cook.push({ ...reading, held: record.data.held_seconds ?? null, piece: record.data.piece ?? null }); if (b.life === "begun") b.life = "baking"; },
  "cooling-reading": (b, at, record, reading) => { if (reading) b.cooling.push({ ...reading, piece: record.data.piece ?? null }); if (b.life === "begun" || b.life === "baking") b.life = "cooling"; },
  "food-reading": (b, at, record, reading) => { if (reading && b.put_away === null) tell["cooling-reading"](b, at, record, reading); else if (reading) (b.food ??= []).push(reading); },
  "hot-hold-reading": (b, at, record, reading) => { if (reading) (b.kept_hot ??= []).push(reading); },
  "reheat-begun": (b, at, record) => { if (b.reheat) (b.reheats ??= []).push(b.reheat); b.reheat = { id: record.id, begun: at, number: b.run, core: [], backs: [], before: { cooling: b.cooling, oven: b.oven } }; b.run += 1; b.cooling = []; b.oven = null; },
  "reheat-reading": (b, at, record, reading) => { const reheat = b.reheat ?? b.reheats?.[b.reheats.length - 1]; if (reading && reheat) reheat.core.push({ ...reading, held: record.data.held_seconds ?? null, piece: record.data.piece ?? null }); },
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

/** A batch that this tablet itself began. */
export function begun(record, kit) {
  const at = Date.parse(record.claimed_at), plan = kit.plans.find(one => one.product === record.data.product);
  return { id: record.batch, code: record.data.code, title: plan?.title ?? record.data.product, product: plan ? record.data.product : "unplanned", plan: plan?.ref ?? null, unplanned: !plan, line: record.data.line, trays: record.data.trays,
    pieces: record.data.pieces, by: record.person, started: at, life: record.data.oven ? "baking" : "begun", holds: [], use_by: null, unit: null, put_away: null, oven: null, first_oven: null, day_end: dayEnd(at, kit.site),
    cook_verdict: "unjudged", cook: [], backs: [], cooling_verdict: "unjudged", cooling: [], run: 1, reheat: null, reheat_offered: false, reheat_refused: "", hot: false, deviations: [], checks: [], told: [] };
}

/** A part of a batch that was split: it goes on with all that was measured before, judged anew under its own id, and is kept hot or cooled. */
export async function parted(b, record, part) {
  const whole = structuredClone(b), hot = part.purpose === "hot";
  const seen = await Promise.all(whole.checks.filter(check => check.taken && check.key.startsWith("own-")).map(async check => ({ ...check, id: await derived(part.batch + "/" + check.key), subject: part.batch, label: check.label.replace(b.code, part.code) })));
  return { ...whole, id: part.batch, code: part.code, trays: part.trays, pieces: part.pieces, left: undefined, hot, split_at: Date.parse(record.claimed_at), checks: seen, touched: true, deviations: [], holds: whole.holds.filter(hold => !whole.deviations.some(matter => matter.id === hold.id)), cooling_verdict: hot ? "within" : whole.cooling_verdict,
    of: { id: b.id, readings: [...whole.cook, ...whole.cooling].map(reading => reading.id) } };
}

/** Adds one record to what is told of its batch. */
export function take(b, record, model) {
  const at = Date.parse(record.claimed_at), t = temperature(record.data.temperature);
  const reading = t && { id: record.id, at, value: record.data.temperature.value, unit: record.data.temperature.unit, doubt: doubtOf(model, record.instrument, at), local: true };
  b.touched = true;
  b.told.push({ id: record.id, kind: record.kind, at, person: record.person, value: record.data.temperature?.value ?? null, unit: record.data.temperature?.unit ?? null, words: record.data.reason ?? "", item: record.data.item,
    good: record.data.good, state: record.state, probe: record.instrument });
  tell[record.kind]?.(b, at, record, reading);
}
