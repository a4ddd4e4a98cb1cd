import { uuid7 } from "./uuid7.js";
import { box, flush, tell } from "./tablet/sender.js";
import { store } from "./tablet/store.js";
import { time } from "./tablet/clock.js";

const page = () => document.body.dataset;

/** Keeps a record on this tablet. Resolves with it as soon as it is on the disk; `sent` resolves with the service's answer, or null. */
export async function save(kind, data, more = {}) {
  const device = page().device;
  await store.raise(device, Number(page().sequence) || 0);
  const entry = await box.save(device, sequence => ({ schema: "record-1", id: uuid7(time.now()), kind, site: "site", device, device_seq: sequence, person: page().person,
    rulebook: page().rulebook ? JSON.parse(page().rulebook) : null, source: "typed", claimed_at: new Date(time.now()).toISOString(), device_clock: time.said(), data, ...more }));
  tell();
  return { record: JSON.parse(entry.body), sent: flush(true).then(answers => answers.get(entry.id) ?? store.find(entry.id).then(kept => kept?.answer ?? null)) };
}

/** Keeps a record and waits for the service's answer; null when it waits on this tablet. */
export const keep = async (kind, data, more) => (await save(kind, data, more)).sent;
