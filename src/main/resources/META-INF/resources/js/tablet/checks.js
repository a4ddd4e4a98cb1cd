import { derived } from "../lib/canonical.js";

const MINUTE = 60000, GRACE = 15 * MINUTE, BEFORE_DEADLINE = 10 * MINUTE, HOT_EVERY = 120 * MINUTE;

/** The state of a check that falls due at a time, was taken at another, or is missed at an end. */
export function stateOf(due, taken, missed, now) {
  if (taken !== null && taken !== undefined) return taken > due + GRACE ? "taken late" : "taken";
  if (now >= missed) return "missed";
  return now < due ? "not yet due" : now > due + GRACE ? "past due" : "due";
}

/** A check of the kit as it stands now: its time goes on although nobody asked the service. */
export const aged = (check, now) => check.taken || check.state === "not needed" ? check : { ...check, state: stateOf(check.due, null, check.missed, now) };

export const open = check => check.state === "due" || check.state === "past due";

/** The moments at which a batch that cools is measured: shortly before each deadline, and as often as its plan says. */
export function coolingTimes(run, everyMinutes, settled) {
  const deadlines = run.stages.filter(stage => stage.deadline !== null).map(stage => stage.deadline);
  const clocks = run.stages.filter(stage => stage.clock !== null).map(stage => stage.clock);
  const clock = clocks.length ? Math.min(...clocks) : run.origin, last = deadlines.length ? Math.max(...deadlines) : null;
  const due = new Set(deadlines.map(deadline => deadline - BEFORE_DEADLINE));
  for (let at = clock + everyMinutes * MINUTE; last !== null && at < last; at += everyMinutes * MINUTE) {
    if (![...due].some(other => Math.abs(other - at) < GRACE)) due.add(at);
  }
  return { clock, last, points: [...due].sort((a, b) => a - b).filter(at => at - GRACE < settled) };
}

/** The checks of one batch, due and taken, as the service finds them too: the same names, so that both mean the same check. */
export async function checksOf(b, plan, run, now) {
  const checks = [], before = new Map(b.checks.map(check => [check.id, check]));
  const add = async (key, due, taken, missed, label = b.code) => {
    const id = await derived(b.id + "/" + key), known = before.get(id);
    const state = known?.state === "not needed" || b.not_needed?.includes(id) ? "not needed" : stateOf(due, taken?.at ?? null, missed, now);
    checks.push({ id, key, subject: b.id, label, due, missed, state, taken: taken?.id ?? null, handed: b.handed?.[id] ?? known?.handed ?? null, why: known?.why ?? "" });
  };
  await add("core", b.first_oven ?? b.started + plan.usual_bake_minutes * MINUTE, b.cook[0] ?? null, b.day_end);
  const last = run ? Math.max(...run.stages.map(stage => stage.deadline ?? -Infinity)) : -Infinity, away = { at: b.put_away, id: b.put_away_by };
  for (const own of plan.own) {
    const seen = b.told.find(told => told.kind === "plan-check" && told.item === own.id);
    const due = own.before ? b.started : Math.min(b.day_end, b.put_away ?? (last > 0 ? last : b.day_end));
    const known = b.checks.find(check => check.key === "own-" + own.id + "-1");
    if (known?.taken) checks.push(known); else await add("own-" + own.id + "-1", due, seen ?? null, b.day_end, b.code + " · " + own.title);
  }
  if (b.hot) { await hot(b, checks, add); return checks; }
  if (run) await cooling(b, plan, run, add);
  await add("put-away", last > 0 ? Math.min(last, b.day_end) : b.day_end, b.put_away ? away : null, b.day_end);
  return checks;
}

/** What is kept hot is probed every two hours. */
async function hot(b, checks, add) {
  for (let due = b.split_at + HOT_EVERY, number = 1; due < b.day_end; due += HOT_EVERY, number += 1) {
    const taken = (b.kept_hot ?? []).find(reading => reading.at >= due - HOT_EVERY / 2 && reading.at < due + HOT_EVERY / 2);
    const known = b.checks.find(check => check.key === "hot-" + number);
    if (known?.taken) checks.push(known); else await add("hot-" + number, due, taken ?? null, Math.min(due + HOT_EVERY / 2, b.day_end));
  }
}

async function cooling(b, plan, run, add) {
  const reached = run.stages.map(stage => stage.reached), waiting = run.stages.some(stage => stage.waiting);
  const lastDeadline = Math.max(...run.stages.map(stage => stage.deadline ?? -Infinity));
  const settled = reached.every(at => at !== null) ? Math.max(...reached) : b.put_away && !waiting ? b.put_away : lastDeadline > 0 ? lastDeadline : b.day_end;
  const { clock, last, points } = coolingTimes(run, plan.cool_every_minutes, settled);
  let left = run.readings.filter(reading => reading.at > clock).sort((x, y) => x.at - y.at);
  for (let i = 0; i < points.length; i++) {
    const at = points[i], next = i + 1 < points.length ? points[i + 1] : last !== null && at < last ? last + GRACE : b.day_end;
    const upTo = i + 1 < points.length ? at + (next - at) / 2 : b.day_end;
    const taken = left.find(reading => reading.at < upTo) ?? null;
    left = left.filter(reading => reading.at >= upTo);
    if (!taken && at >= settled) continue;
    await add("cool-" + (i + 1), at, taken, Math.min(next, b.day_end));
  }
}
