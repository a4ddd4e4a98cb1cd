import { compare, inUnitOf, meets } from "../lib/decimal.js";
import { named, say, shown } from "/words.js";

/** Minutes as thousandths of a minute would round; times are kept in whole milliseconds, which are exact. */
const MINUTE = 60000;

function lastOfHotPart(readings, hot) {
  let last = null;
  for (const reading of readings) {
    if (!meets(hot, reading.temperature)) break;
    last = reading.at;
  }
  return last;
}

function passing(readings, from, oven) {
  let above = null;
  for (const reading of readings) {
    const side = compare(reading.temperature, inUnitOf(from, reading.temperature));
    if (side <= 0) return { earliest: side === 0 ? reading.at : above ?? oven, latest: reading.at, notBegun: false };
    above = reading.at;
  }
  return { earliest: null, latest: null, notBegun: true };
}

function metInTime(stage, readings, deadline) {
  let met = false;
  for (const reading of readings) {
    const meeting = meets(stage.to, reading.temperature);
    if (reading.at <= deadline) met = meeting;
    else if (!meeting) return false;
  }
  return met;
}

function judgeStage(stage, readings, oven, start, asOf) {
  const clocks = stage.counted === "passing" ? passing(readings, stage.from, oven)
    : { earliest: stage.counted === "oven" ? oven : start, latest: stage.counted === "oven" ? oven : start, notBegun: false };
  const allowed = stage.minutes * MINUTE, after = clock => clock === null ? null : clock + allowed;
  const deadline = after(clocks.earliest), lastDeadline = after(clocks.latest);
  const firstMet = deadline === null ? null : readings.find(r => r.at > deadline && meets(stage.to, r.temperature))?.at ?? null;
  const said = { stage, clock: clocks.earliest, latestClock: clocks.latest, deadline, reached: reached(stage, readings) };
  const as = (verdict, reason) => ({ ...said, verdict, reason, left: reason === "open" ? deadline - asOf : null, late: reason === "taken-late" ? firstMet - deadline : null });
  if (!stage.inForce) return as("unjudged", "no-limit");
  const surelyLate = lastDeadline !== null || clocks.notBegun || !readings.length ? lastDeadline : readings[0].at + allowed;
  if (surelyLate !== null && readings.some(r => r.at >= surelyLate && !meets(stage.to, r.temperature))) return as("breached", null);
  if (deadline !== null && metInTime(stage, readings, deadline)) return as("within", null);
  if (clocks.notBegun) return as("unjudged", "not-begun");
  if (deadline === null) return as("unjudged", "start-unknown");
  if (asOf < deadline) return as("unjudged", "open");
  if (stage.counted === "passing" && deadline < lastDeadline && asOf <= lastDeadline) return as("unjudged", "passing-not-seen");
  return as("unjudged", firstMet !== null ? "taken-late" : "not-measured");
}

function reached(stage, readings) {
  let met = null;
  for (const reading of readings) met = meets(stage.to, reading.temperature) ? met ?? reading.at : null;
  return met;
}

const because = stage => ({ "no-limit": () => say("j_not_judged_no_number_is_in"), "not-begun": () => say("j_not_begun_the_food_has_not"), "start-unknown": () => say("j_not_judged_it_is_not_known"),
  open: () => say("j_min_left", Math.floor(stage.left / MINUTE)), "passing-not-seen": () => say("j_not_judged_the_passing_of_the"),
  "taken-late": () => say("j_not_judged_first_seen_there_min", Math.floor(stage.late / MINUTE)), "not-measured": () => say("j_not_judged_nothing_was_measured_in") })[stage.reason]();

function worded(judged) {
  const rule = say("j_cool", judged.stage.words) + (judged.stage.standing === "law" ? "" : " (" + named("standing", judged.stage.standing) + ")");
  const happened = judged.verdict === "within" ? say("j_met") : judged.verdict === "breached" ? say("j_breached_hold_the_batch_and_answer", judged.stage.breach) : because(judged);
  return { ...judged, words: rule + ": " + happened, waiting: judged.reason === "open" || judged.reason === "not-begun" };
}

/** The worse of two verdicts: breached, then unjudged, then within. */
export const worse = (a, b) => ["within", "unjudged", "breached"].indexOf(a) >= ["within", "unjudged", "breached"].indexOf(b) ? a : b;

/**
 * Judges one run of cooling by what was measured and never by what lies between: the twin of the service's judge, held by the same table of cases.
 *
 * @param stages as the kit writes them, bounds read
 * @param oven the moment out of the oven in milliseconds, or null
 * @param given readings `{at, temperature}`
 */
export function judgeCooling(stages, oven, given, asOfNow) {
  const readings = [...given].sort((a, b) => a.at - b.at || compare(a.temperature, b.temperature));
  const asOf = readings.length ? Math.max(asOfNow, readings[readings.length - 1].at) : asOfNow;
  const hot = stages.find(stage => stage.from)?.from;
  const start = (hot ? lastOfHotPart(readings, hot) : null) ?? oven;
  const judged = stages.map(stage => worded(judgeStage(stage, readings, oven, start, asOf)));
  return { whole: judged.map(one => one.verdict).reduce(worse, "within"), stages: judged };
}

/** What is said of one reading of a run that was judged. */
export function saidOf(reading, run) {
  const failed = run.stages.find(one => one.verdict === "breached" && !meets(one.stage.to, reading.temperature)
    && (one.latestClock === null || reading.at >= one.latestClock + one.stage.minutes * MINUTE));
  if (failed) return { verdict: "breached", words: shown(reading.temperature.text) + ". " + failed.words };
  const open = run.stages.find(one => one.verdict === "unjudged");
  return { verdict: run.whole === "within" ? "within" : "unjudged", words: shown(reading.temperature.text) + ". " + (open?.words ?? say("j_cooled_in_time_by_every_stage")) };
}
