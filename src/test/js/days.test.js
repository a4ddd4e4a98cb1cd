import { dayEnd } from "/js/tablet/fold/days.js";
import { equal, ok } from "/test/assert.js";

export async function a_business_day_ends_where_the_service_says_also_when_the_clocks_change() {
  const all = await (await fetch("/cases/days")).json();
  ok(all.length > 3000, "cases: " + all.length);
  for (const one of all) equal(dayEnd(one.at, one), one.end, new Date(one.at).toISOString() + " " + one.zone + " " + one.day_ends);
}
