/**
 * What time it is. The tablet's wall clock may be wrong, and somebody may set it while food cools; the browser's monotonic clock only goes on. The
 * service's moment, learnt at each contact with half the round trip as its doubt, sets the wall clock right. Within a page a wall clock that jumps
 * back is not followed; one that jumps ahead is taken for a sleep, which a monotonic clock may not count.
 */
const KEY = "trivet.clock";
const JUMP_MS = 2000;

export function clock(source = { wall: () => Date.now(), mono: () => performance.now() }, kept = localStorage) {
  const session = Math.floor(Math.random() * 2 ** 48).toString(36);
  let known = JSON.parse(kept.getItem(KEY) ?? "null");
  let mark = { wall: source.wall(), mono: source.mono() };
  /** A wall clock that stands before the last moment seen by an earlier page was set back in between. */
  let back = known && mark.wall < known.seen - JUMP_MS ? known.seen - mark.wall : 0;
  let behind = 0;

  /** The wall clock as it would be, had nobody set it back since this page came. */
  function steady() {
    const wall = source.wall(), mono = source.mono();
    const ahead = (wall - mark.wall) - (mono - mark.mono);
    if (ahead < -JUMP_MS) { behind -= ahead; }
    mark = { wall, mono };
    return wall + behind + back;
  }

  function remember() {
    kept.setItem(KEY, JSON.stringify({ ...(known ?? {}), seen: Math.max(known?.seen ?? 0, source.wall()) }));
  }

  /** A contact: the service's moment lay between our asking and its answer. */
  function contact(service, askedAt, answeredAt) {
    behind = 0;
    back = 0;
    const wall = source.wall(), trip = answeredAt - askedAt;
    known = { offset: Math.round(service + trip / 2 - wall), at: wall, mono: source.mono(), session, trip: Math.round(trip), seen: wall };
    mark = { wall, mono: source.mono() };
    remember();
  }

  const offset = () => known?.offset ?? null;
  /** The present moment, as well as this tablet knows it, in milliseconds. */
  const now = () => Math.round(steady() + (offset() ?? 0));

  function local(date) {
    const minutes = -date.getTimezoneOffset(), two = n => String(Math.floor(Math.abs(n))).padStart(2, "0");
    return new Date(date.getTime() + minutes * 60000).toISOString().slice(0, 23) + (minutes < 0 ? "-" : "+") + two(minutes / 60) + ":" + two(minutes % 60);
  }

  /** What a record says of the clocks: the raw wall clock, the monotonic one, and the last known offset with its age and doubt. */
  function said() {
    const wall = source.wall(), steadied = steady();
    return { wall: local(new Date(wall)), zone: Intl.DateTimeFormat().resolvedOptions().timeZone, monotonic_ms: Math.round(source.mono()), session,
      offset_ms: offset(), offset_age_s: known?.offset === undefined ? null : Math.max(0, Math.round((known.session === session ? source.mono() - known.mono : steadied - known.at) / 1000)),
      offset_trip_ms: known?.trip ?? null, set_back_ms: Math.round(behind + back) };
  }

  /** How sure the present moment is, in milliseconds either way; null when the service's clock was never met. */
  const doubt = () => known?.offset === undefined ? null : known.trip / 2 + behind + back;

  return { now, said, contact, offset, doubt, remember };
}

export const time = clock();
