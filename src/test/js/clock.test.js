import { clock } from "/js/tablet/clock.js";
import { equal, ok } from "/test/assert.js";

const HOUR = 3600000, DAY = 24 * HOUR;

function hands(shift = 0) {
  const kept = new Map();
  const at = { real: 1e12, shift, mono: 1000 };
  return { at, pass: ms => { at.real += ms; at.mono += ms; }, source: { wall: () => at.real + at.shift, mono: () => at.mono }, kept: { getItem: key => kept.get(key) ?? null, setItem: (key, value) => kept.set(key, value) } };
}

export async function a_clock_that_is_three_hours_ahead_is_set_right_by_the_service() {
  const h = hands(3 * HOUR), c = clock(h.source, h.kept);
  equal(c.doubt(), null, "nothing is known yet");
  equal(c.now(), h.at.real + 3 * HOUR);
  c.contact(h.at.real, h.at.mono - 40, h.at.mono);
  ok(Math.abs(c.now() - h.at.real) <= 20, "within half the round trip");
  equal(c.said().offset_ms, -3 * HOUR + 20);
  h.pass(2 * HOUR);
  ok(Math.abs(c.now() - h.at.real) <= 20);
  equal(c.said().offset_age_s, 7200);
}

export async function a_clock_set_back_a_day_while_food_cools_never_runs_backwards() {
  const h = hands(), c = clock(h.source, h.kept);
  c.contact(h.at.real, h.at.mono, h.at.mono);
  const before = c.now();
  h.pass(HOUR);
  h.at.shift = -DAY;
  ok(Math.abs(c.now() - before - HOUR) < 10, "an hour has passed, whatever the wall clock says: " + (c.now() - before));
  equal(c.said().set_back_ms, DAY);
  h.pass(HOUR);
  ok(Math.abs(c.now() - before - 2 * HOUR) < 10);
  ok(c.doubt() >= DAY, "and says that it is unsure");
  c.contact(h.at.real, h.at.mono, h.at.mono);
  ok(Math.abs(c.now() - h.at.real) < 10 && c.said().set_back_ms === 0);
}

export async function a_page_that_comes_after_the_clock_was_set_back_goes_on_from_the_last_moment_seen() {
  const h = hands(), first = clock(h.source, h.kept);
  first.contact(h.at.real, h.at.mono, h.at.mono);
  const before = first.now();
  first.remember();
  h.at.shift = -DAY;
  h.at.mono = 5;
  const second = clock(h.source, h.kept);
  ok(second.now() >= before, "no time before one that was seen");
  equal(second.said().set_back_ms, DAY);
}

export async function a_sleep_counts_although_the_monotonic_clock_stood_still() {
  const h = hands(), c = clock(h.source, h.kept);
  c.contact(h.at.real, h.at.mono, h.at.mono);
  h.at.real += 2 * HOUR;
  ok(Math.abs(c.now() - h.at.real) < 10);
}
