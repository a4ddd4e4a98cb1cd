import { bound, decimal, temperature, compare } from "/js/lib/decimal.js";
import { judgeCook } from "/js/judge/cook.js";
import { judgeCooling, saidOf } from "/js/judge/cooling.js";
import { judgeRange } from "/js/judge/range.js";
import { stages } from "/js/tablet/kit.js";
import { derived } from "/js/lib/canonical.js";
import { equal, ok } from "/test/assert.js";

const cases = name => fetch("/cases/" + name).then(answer => answer.json());

export async function cooks_are_judged_as_the_service_does_and_in_the_same_words() {
  const all = await cases("cook");
  ok(all.length > 3000, "cases: " + all.length);
  for (const one of all) {
    const rows = one.rows.map(row => ({ least: bound(row.least), seconds: row.seconds, inForce: row.in_force }));
    const said = judgeCook(rows, temperature(one.temperature), one.held);
    equal(said.verdict + ": " + said.words, one.verdict + ": " + one.words, JSON.stringify([one.rulebook, one.temperature, one.held]));
  }
}

export async function coolings_are_judged_as_the_service_does_and_in_the_same_words() {
  const all = await cases("cooling");
  ok(all.length > 2000, "cases: " + all.length);
  for (const one of all) {
    const points = one.readings.map(reading => ({ at: reading.at, temperature: temperature(reading) }));
    const run = judgeCooling(stages(one.stages), one.oven, points, one.as_of);
    equal(run.stages.map(stage => stage.reason ?? stage.verdict).join(" "), one.expected, JSON.stringify(one));
    equal(run.stages.map(stage => stage.words).join(" | "), one.words, JSON.stringify(one));
    equal(run.whole, one.whole);
    for (const point of points) ok(saidOf(point, run).words.startsWith(point.temperature.text + ". "), "a sentence for each reading");
  }
}

export async function ranges_are_judged_as_the_service_does_and_in_the_same_words() {
  const all = await cases("ranges");
  ok(all.length > 500, "cases: " + all.length);
  for (const one of all) {
    const limit = { minimum: bound(one.limit.minimum), maximum: bound(one.limit.maximum), operating: bound(one.limit.operating), inForce: one.limit.in_force, breach: one.limit.breach, words: one.limit.words };
    const said = judgeRange(limit, temperature(one.temperature));
    equal(said.verdict + ": " + said.words, one.verdict + ": " + one.words, JSON.stringify([one.rulebook, one.temperature]));
  }
}

export async function temperatures_are_compared_exactly() {
  const c = value => temperature({ value, unit: "C" }), f = value => temperature({ value, unit: "F" });
  ok(compare(c("74.9"), c("75.0")) < 0 && compare(c("75"), c("75.000")) === 0 && compare(f("212"), c("100")) === 0 && compare(f("70"), c("21.1")) > 0 && compare(c("-18,5"), c("-18.4")) < 0);
  ok(decimal("1e3") === null && decimal("") === null && decimal("7.") === null && decimal(".5") === null);
}

export async function names_are_derived_as_the_service_does() {
  for (const one of await cases("names")) equal(await derived(one.name), one.id);
}
