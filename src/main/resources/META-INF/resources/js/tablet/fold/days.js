import { dates } from "/words.js";

/** Days and moments as the site counts and writes them, in its zone. */
const MINUTE = 60000, DAY = 24 * 60 * MINUTE;

/** What a clock in a zone shows at a moment, read as if it were UTC. */
function shown(at, zone) {
  const p = Object.fromEntries(new Intl.DateTimeFormat("en-GB", { timeZone: zone, hourCycle: "h23", year: "numeric", month: "2-digit", day: "2-digit", hour: "2-digit", minute: "2-digit", second: "2-digit" }).formatToParts(new Date(at))
    .map(part => [part.type, Number(part.value)]));
  return Date.UTC(p.year, p.month - 1, p.day, p.hour, p.minute, p.second);
}

/** The moment at which a clock in a zone shows this; the first of two where the hour comes twice, and as long after the change where it is left out. */
function momentOf(wall, zone) {
  const before = wall - (shown(wall - DAY, zone) - (wall - DAY)), after = wall - (shown(wall + DAY, zone) - (wall + DAY));
  const showing = [before, after].filter(at => shown(at, zone) === wall);
  return showing.length ? Math.min(...showing) : before;
}

/** How a site's zone writes clock times, and moments with their day, in the language of whoever reads. */
export function written(zone) {
  const clock = new Intl.DateTimeFormat(dates(), { timeZone: zone, hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
  const day = new Intl.DateTimeFormat(dates(), { timeZone: zone, day: "numeric", month: "short" });
  const time = at => clock.format(at);
  return { time, moment: at => day.format(at) + " " + time(at) };
}

/** The first moment after the business day of a moment. */
export function dayEnd(at, { zone, day_ends: ends }) {
  const [hour, minute] = ends.split(":").map(Number), wall = shown(Math.floor(at / MINUTE) * MINUTE, zone), day = new Date(wall);
  const today = Date.UTC(day.getUTCFullYear(), day.getUTCMonth(), day.getUTCDate(), hour, minute);
  return momentOf(wall < today ? today : Date.UTC(day.getUTCFullYear(), day.getUTCMonth(), day.getUTCDate() + 1, hour, minute), zone);
}
