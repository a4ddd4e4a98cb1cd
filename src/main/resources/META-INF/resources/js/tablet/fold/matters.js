import { derived } from "../../lib/canonical.js";
import { say } from "/words.js";
import { over } from "../next.js";
import { reheatRefusal } from "./measured.js";

const NEEDED = ["what_happened", "cause", "control_restored", "disposition", "decided_by", "prevention"];

/** Lays an answer over a deviation; what is complete waits for a second person. */
export function answered(matter, data) {
  matter.answer = { ...matter.answer, ...data };
  if (matter.state === "open" && NEEDED.every(name => matter.answer[name])) matter.state = "answered";
}

/** The name of what a reading opens; the parts of a batch share that of what was read before it was split. */
const nameOf = (b, reading) => derived((b.of?.readings.includes(reading.id) ? b.of.id : b.id) + "/deviation/" + reading.id);

/** Opens a deviation under the name that the service gives it too; failed readings of one control share the one that is open. */
export async function open(b, plan, limit, reading, { key = null, breach = key === null, food = false } = {}) {
  if (key === null && b.deviations.some(matter => matter.limit === limit && matter.breach && matter.state !== "closed")) return;
  const id = key === null ? await nameOf(b, reading) : await derived(b.id + "/" + key);
  if (b.deviations.some(matter => matter.id === id)) return;
  const matter = { id, subject: b.id, label: b.code, limit, words: reading.words, limit_words: "", state: "open", breach, since: reading.at, offers: plan.offers[limit] ?? ["hold", "destroy"], answer: b.before?.[id]?.answer ?? {}, local: true };
  if (b.before?.[id]) matter.state = b.before[id].state;
  b.deviations.push(matter);
  b.holds.push({ id, words: reading.words, since: reading.at, food, local: true });
  for (const data of b.answers ?? []) if (data.deviation === id) answered(matter, data);
}

/** A core that failed and was put right at the step is no open matter any more. */
export async function drop(b, reading) {
  const id = await nameOf(b, reading);
  b.deviations = b.deviations.filter(matter => matter.id !== id);
  b.holds = b.holds.filter(hold => hold.id !== id);
}

/** Why a stage is not judged, with the doubt about a probe where one was used. */
const doubted = (words, curve) => [words, ...curve.readings.filter(reading => reading.doubt).slice(0, 1).map(reading => reading.doubt)].join(" ");

/** What is a deviation because nothing, or nothing that can be judged, was measured: looked at anew with what this tablet recorded since. */
export async function unmeasured(b, plan, { cook, cooling, reheats }, now) {
  const anew = await Promise.all(["core", "cooling", "hot", ...[...reheats.filter(reheat => reheat.before).map(reheat => reheat.number), b.run].map(run => "cooling-" + run)].map(key => derived(b.id + "/" + key)));
  const earlier = b.deviations.filter(matter => anew.includes(matter.id));
  b.before = Object.fromEntries(earlier.map(matter => [matter.id, matter]));
  b.deviations = b.deviations.filter(matter => !earlier.includes(matter));
  b.holds = b.holds.filter(hold => !earlier.some(matter => matter.id === hold.id));
  if (b.life === "struck out") return;
  const begun = b.run > 1 || b.oven !== null || b.cooling.length > 0, ended = b.put_away !== null || now >= b.day_end;
  if (!cook.uncorrected.length && b.cook.length === 0 && (begun || ended)) await open(b, plan, "core-cook", { at: b.started, words: say("j_the_core_was_not_probed_a") }, { key: "core" });
  else if (!cook.uncorrected.length && b.cook.length > 0 && cook.verdict === "unjudged") await open(b, plan, "core-cook", { at: b.started, words: b.cook[b.cook.length - 1].words }, { key: "core" });
  if (b.hot && !over(b) && now >= b.day_end) await open(b, plan, "hot-holding", { at: b.day_end, words: say("j_it_was_kept_hot_and_what") }, { key: "hot" });
  if (b.hot || b.life === "destroyed") return;
  const silent = cooling?.stages.find(stage => stage.verdict === "unjudged" && !(stage.waiting && !over(b)));
  if (silent) await open(b, plan, "cooling", { at: cooling.origin, words: doubted(silent.words, cooling) }, { key: "cooling-" + b.run });
  else if (!b.curve && (ended || over(b))) await open(b, plan, "cooling", { at: b.started, words: say("j_no_cooling_was_recorded_a_missing") }, { key: "cooling" });
}

/** What the reheats of a batch open that this tablet saw begin, go on or end: the run before one, its permission, and its core. */
export async function reheated(b, plan, reheat) {
  const { judged, before } = reheat;
  if (before && !b.hot) {
    const refused = reheatRefusal(plan, before.curve, reheat.number - 1, reheat.begun), failed = before.curve?.readings.find(reading => reading.verdict === "breached");
    if (refused) await open(b, plan, "reheat", { at: reheat.begun, words: say("j_reheated_although_it_may_not_be", refused) }, { key: "reheat/" + reheat.id, breach: true });
    if (failed) await open(b, plan, "cooling", failed);
    const silent = before.curve?.stages.find(stage => stage.verdict === "unjudged" && !stage.waiting);
    if (silent) await open(b, plan, "cooling", { at: before.curve.origin, words: doubted(silent.words, before.curve) }, { key: "cooling-" + reheat.number });
  }
  const key = "reheat-" + reheat.number, id = await derived(b.id + "/" + key), earlier = b.deviations.find(matter => matter.id === id);
  if (earlier) {
    (b.before ??= {})[id] = earlier;
    b.deviations = b.deviations.filter(matter => matter !== earlier);
    b.holds = b.holds.filter(hold => hold.id !== id);
  }
  for (const reading of judged.corrected) await drop(b, reading);
  if (judged.failed.length) { await open(b, plan, "reheat", { ...judged.failed[0], words: say("j_core_after_the_reheat", judged.failed[0].words) }); return; }
  const ended = reheat.out || reheat.number < b.run - 1 || (b.put_away !== null && b.put_away > reheat.begun);
  if (judged.verdict !== "unjudged" || !(ended || judged.readings.length)) return;
  await open(b, plan, "reheat", { at: reheat.begun, words: judged.readings.length ? judged.readings[judged.readings.length - 1].words : say("j_the_core_was_not_probed_after") }, { key });
}
