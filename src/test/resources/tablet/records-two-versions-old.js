
const WAITING = "trivet.waiting";
const page = () => document.body.dataset;
const loaded = Date.now();
/** How far this tablet's clock was off when the page came: the service's moment less ours, in milliseconds. */
const offset = page().now ? Number(page().now) - loaded : null;

const read = () => JSON.parse(localStorage.getItem(WAITING) ?? "[]");
const write = list => localStorage.setItem(WAITING, JSON.stringify(list));

/** Local wall clock with its offset, as ISO 8601. */
function wall(date = new Date()) {
  const minutes = -date.getTimezoneOffset();
  const sign = minutes < 0 ? "-" : "+";
  const two = n => String(Math.floor(Math.abs(n))).padStart(2, "0");
  return new Date(date.getTime() + minutes * 60000).toISOString().slice(0, 23) + sign + two(minutes / 60) + ":" + two(minutes % 60);
}

/** Runs one thing at a time over all tabs of this tablet, so that no sequence number is used twice. */
const alone = work => navigator.locks ? navigator.locks.request("trivet.records", work) : work();

/** Keeps a record on this tablet, then sends everything that waits. Resolves with the server's answer, or null. */
async function keep(kind, data, more = {}) {
  const record = await alone(() => {
    const device = page().device;
    const key = "trivet.sequence." + device;
    const sequence = Math.max(Number(localStorage.getItem(key)) || 0, Number(page().sequence) || 0) + 1;
    localStorage.setItem(key, sequence);
    const made = { schema: "record-1", id: uuid7(), kind, site: "site", device, device_seq: sequence, person: page().person,
      rulebook: page().rulebook ? JSON.parse(page().rulebook) : null, source: "typed", claimed_at: new Date(Date.now() + (offset ?? 0)).toISOString(),
      device_clock: { wall: wall(), zone: Intl.DateTimeFormat().resolvedOptions().timeZone, monotonic_ms: performance.now(),
        offset_ms: offset, offset_age_s: offset === null ? null : Math.round((Date.now() - loaded) / 1000) }, data, ...more };
    write([...read(), made]);
    return made;
  });
  const answers = await flush();
  return answers.get(record.id) ?? null;
}

/** Sends what waits, in order; a record leaves this tablet only after the server has said that it has it. */
async function flush() {
  return alone(async () => {
    const answers = new Map();
    for (const record of read()) {
      let response;
      try {
        response = await fetch("/api/records/" + record.id, { method: "PUT", headers: { "Content-Type": "application/json" }, body: JSON.stringify(record) });
      } catch { break; }
      const body = await response.json().catch(() => ({}));
      answers.set(record.id, { ...body, status: response.status });
      if (response.ok) write(read().filter(other => other.id !== record.id));
      else if (response.status < 500 && response.status !== 401) {
        write(read().filter(other => other.id !== record.id));
        localStorage.setItem("trivet.refused." + record.id, JSON.stringify({ record, answer: body }));
      } else break;
    }
    return answers;
  });
}

/** How many records wait on this tablet. */
const waiting = () => read().length;
