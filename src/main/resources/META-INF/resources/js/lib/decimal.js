/** Temperatures as they were typed: exact decimals with their scale, compared without any rounding. */

/** A decimal text as a whole number and its count of decimals; null for anything else. */
export function decimal(text) {
  const typed = String(text ?? "").trim().replace(",", ".").replace("−", "-");
  const parts = /^([+-]?)(\d{1,9})(?:\.(\d{1,12}))?$/.exec(typed);
  if (!parts) return null;
  const digits = BigInt(parts[2] + (parts[3] ?? ""));
  return { n: parts[1] === "-" ? -digits : digits, places: (parts[3] ?? "").length, text: typed.replace(/^\+/, "") };
}

const raised = (number, places) => number.n * 10n ** BigInt(places - number.places);

/** Less than 0, 0 or more, as one decimal is less than, equal to or more than another. */
export function compareDecimals(left, right) {
  const places = Math.max(left.places, right.places), a = raised(left, places), b = raised(right, places);
  return a < b ? -1 : a > b ? 1 : 0;
}

/** A temperature `{value, unit}` as a record writes it; null for one that cannot be read. */
export function temperature(written) {
  const number = decimal(written?.value);
  return number && (written.unit === "C" || written.unit === "F") ? { number, unit: written.unit, text: number.text + " °" + written.unit } : null;
}

/** Nine times the degrees Celsius, exact in both scales. */
function ninefold({ number, unit }) {
  return unit === "C" ? { n: number.n * 9n, places: number.places } : { n: (number.n - 32n * 10n ** BigInt(number.places)) * 5n, places: number.places };
}

/** Compares two temperatures, each in its own scale. */
export function compare(left, right) {
  return left.unit === right.unit ? compareDecimals(left.number, right.number) : compareDecimals(ninefold(left), ninefold(right));
}

/** The number of a bound in the unit of the reading where it was printed in it, else in °C. */
export const inUnitOf = (bound, reading) => reading.unit === "F" && bound.f ? bound.f : bound.c;

/** A bound `{min, incl, c, f}` as the kit writes it, with its numbers read. */
export const bound = written => written && { min: written.min, incl: written.incl, c: temperature({ value: written.c, unit: "C" }),
  f: written.f ? temperature({ value: written.f, unit: "F" }) : null, words: written.words };

/** Whether a reading is on the permitted side of a bound. */
export function meets(limit, reading) {
  const side = compare(reading, inUnitOf(limit, reading));
  return side === 0 ? limit.incl : limit.min === side > 0;
}

/** No food has a temperature above 120 °C or below −40 °C. */
const HIGHEST = temperature({ value: "120", unit: "C" }), LOWEST = temperature({ value: "-40", unit: "C" });
export const impossible = reading => compare(reading, HIGHEST) > 0 || compare(reading, LOWEST) < 0;

/** A decimal without trailing zeros, as text. */
export function plain(number) {
  const sign = number.n < 0n ? "-" : "", digits = (number.n < 0n ? -number.n : number.n).toString().padStart(number.places + 1, "0");
  const whole = digits.slice(0, digits.length - number.places), part = number.places ? digits.slice(-number.places).replace(/0+$/, "") : "";
  return sign + whole + (part ? "." + part : "");
}

/** The difference of two decimals, exact. */
export function minus(left, right) {
  const places = Math.max(left.places, right.places);
  return { n: raised(left, places) - raised(right, places), places };
}
