import { bound } from "../lib/decimal.js";
import { shelf, store } from "./store.js";
import { KEPT } from "./outbox.js";
import { time } from "./clock.js";

/** What this tablet took along, with its bounds read once; null before it was ever with the service. */
let read = null;

const rows = limit => limit && { ...limit, operating: bound(limit.operating), rows: limit.rows.map(row => ({ least: bound(row.least), seconds: row.seconds, inForce: row.in_force })) };
const range = limit => limit && { minimum: bound(limit.minimum), maximum: bound(limit.maximum), operating: bound(limit.operating), inForce: limit.in_force, breach: limit.breach, words: limit.words };
export const stages = list => list.map(stage => ({ from: bound(stage.from), to: bound(stage.to), minutes: Number(stage.minutes), counted: stage.counted, inForce: stage.in_force, standing: stage.standing,
  breach: stage.breach, words: stage.words }));
const ranges = named => Object.fromEntries(Object.entries(named).map(([name, limit]) => [name, range(limit)]));
const product = plan => ({ ...plan, core: rows(plan.core), reheat: rows(plan.reheat), storage: bound(plan.storage), ranges: ranges(plan.ranges) });

/** A kit with its bounds read. */
export function prepared(kit) {
  return { ...kit, stages: stages(kit.cooling), ranges: ranges(kit.ranges),
    plans: kit.plans.map(product), unplanned: product(kit.unplanned) };
}

/** The plan of a product as it is in the kit, or what holds for one without a plan. */
export const planOf = (kit, batch) => kit.plans.find(plan => plan.product === batch.product) ?? kit.unplanned;

/** Takes the present kit along when the service has another one. Resolves with whether the service answered. */
export async function refresh() {
  const before = await shelf.get("kit");
  const answer = await fetch("/tablet/kit.json", { headers: { "Trivet-Unattended": "1", ...(before ? { "If-None-Match": before.mark } : {}) }, signal: AbortSignal.timeout(8000) });
  if (answer.status === 304) return true;
  if (!answer.ok || answer.redirected) return false;
  await shelf.put("kit", { mark: answer.headers.get("ETag"), body: await answer.json() });
  read = null;
  return true;
}

/** The kit, and this tablet's records that are not in it yet, in the order of their numbers. */
export async function model() {
  const kept = await shelf.get("kit");
  if (!kept) return null;
  if (read?.mark !== kept.mark) read = { mark: kept.mark, kit: prepared(kept.body) };
  const { kit } = read;
  const entries = (await store.all()).filter(entry => entry.device === kit.device && !(entry.state === KEPT && entry.receive_number <= kit.number)).sort((a, b) => a.seq - b.seq);
  return { kit, now: time.now(), entries, local: entries.map(entry => ({ ...JSON.parse(entry.body), state: entry.state, answer: entry.answer })) };
}
