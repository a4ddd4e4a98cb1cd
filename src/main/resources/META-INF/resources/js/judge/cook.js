import { compare, compareDecimals, decimal, impossible, inUnitOf, meets, minus, plain } from "../lib/decimal.js";
import { say } from "/words.js";

/** A time in words: whole minutes as minutes, anything else as seconds. */
export function duration(seconds) {
  const number = Number(seconds);
  return number >= 60 && number % 60 === 0 ? say("j_min", String(number / 60)) : plain(decimal(seconds)) + " s";
}

const printed = (row, seen) => {
  const number = inUnitOf(row.least, seen).text;
  return Number(row.seconds) === 0 ? number : say("j_for", number, duration(row.seconds));
};
const hotter = (a, b) => compare(b.least.c, a.least.c);

/** How far a reading is short of a row, in °C, rounded up to hundredths where it was read in °F. */
function rise(seen, row) {
  if (row.least.f || seen.unit === "C") {
    const gap = minus(inUnitOf(row.least, seen).number, seen.number);
    return seen.unit === "C" ? plain(gap) : celsius(gap);
  }
  const c = row.least.c.number;
  return celsius(minus({ n: c.n * 9n * 10n ** 1n + 320n * 5n * 10n ** BigInt(c.places), places: c.places + 1 }, { n: seen.number.n * 5n, places: seen.number.places }), 5n);
}

/** A difference in °F (or so many times it) as °C to two decimals, upwards. */
function celsius(gap, times = 1n) {
  const above = gap.n * 5n * 100n, below = 9n * times * 10n ** BigInt(gap.places);
  return plain({ n: above / below + (above % below > 0n ? 1n : 0n), places: 2 });
}

/**
 * Judges one core temperature by published rows: it must meet one of them as printed, held as long as the row says. A hold that was not recorded
 * is not taken for a pass.
 *
 * @param rows the rows for this food: `{least, seconds, inForce}`
 * @param held seconds as decimal text; null when the hold was not recorded
 */
export function judgeCook(rows, seen, held) {
  if (impossible(seen)) return { verdict: "unjudged", words: say("j_no_food_has_this_temperature_it", seen.text) };
  if (!rows?.length) return { verdict: "unjudged", words: say("j_no_confirmed_rulebook_has_a_limit", seen.text) };
  if (!rows.every(row => row.inForce)) return { verdict: "unjudged", words: say("j_no_number_is_in_force_to", seen.text) };
  const time = decimal(held ?? "0"), long = row => compareDecimals(time, decimal(row.seconds)) >= 0;
  const met = rows.filter(row => meets(row.least, seen) && long(row)).sort(hotter)[0];
  if (met) return { verdict: "within", words: say("j_meets", seen.text, printed(met, seen)) };
  if (held === null && rows.some(row => meets(row.least, seen))) return { verdict: "unjudged", words: say("j_hot_enough_but_how_long_it", seen.text) };
  const nearest = rows.filter(long).sort(hotter).pop();
  const gap = nearest ? say("j_c_short_of", rise(seen, nearest), printed(nearest, seen)) : say("j_short_of", printed([...rows].sort(hotter)[0], seen));
  return { verdict: "breached", words: say("j_back_in_the_oven_then_probe", seen.text, gap) };
}
