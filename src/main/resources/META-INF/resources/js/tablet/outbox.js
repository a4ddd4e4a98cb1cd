import { canonical } from "../lib/canonical.js";

/**
 * What becomes of a record on this tablet. It is frozen when it is saved, under its own id and the next number of the tablet, and stays until the
 * service has said, with the same hash, that it has it on disk. One that is refused steps aside with its reason, one that breaks the service three
 * times lets the others pass; neither holds anybody up. Nothing expires. This file knows neither browser nor network; it is given a store, a way to post and a lock, and hardly ever changes.
 */
export const WAITING = "waiting", KEPT = "kept", ASIDE = "aside", REVIEWED = "reviewed";
const AT_ONCE = 50;
const PATIENT_FOR = 3;

export function outbox({ store, post, hash, alone, now }) {

  /** Saves a record made from its sequence number; resolves when it is on this tablet's disk. */
  const save = (device, make) => alone("trivet.save", async () => {
    const record = make(await store.last(device) + 1);
    const body = canonical(record);
    const entry = { id: record.id, device, seq: record.device_seq, kind: record.kind, batch: record.batch ?? null, body, sha256: await hash(body), saved_at: now(), state: WAITING };
    await store.append(entry);
    return entry;
  });

  /** What an answer of the service means for a record: that it is kept, steps aside, or goes on waiting. */
  function settled(entry, answer) {
    if (!answer || answer.id !== entry.id) return null;
    if (answer.status === 200 || answer.status === 201) {
      return answer.sha256 === entry.sha256 ? { ...entry, state: KEPT, kept_at: now(), receive_number: answer.receive_number, answer } : null;
    }
    return answer.status >= 400 && answer.status < 500 && ![401, 408, 429].includes(answer.status) ? { ...entry, state: ASIDE, answer } : null;
  }

  async function round(answers) {
    const passed = new Set();
    let most = AT_ONCE;
    for (;;) {
      const some = await store.waiting(most, passed);
      if (some.length === 0) return passed.size === 0;
      const reply = await post(some.map(entry => entry.body));
      if ([401, 403, 429].includes(reply.status)) return false;
      if ([502, 503, 504].includes(reply.status)) return false;
      if (reply.status >= 500 || reply.status === 400 || reply.status === 413) {
        if (some.length > 1) { most = 1; continue; }
        const troubles = (some[0].troubles ?? 0) + 1;
        await store.replace({ ...some[0], troubles });
        if (troubles < PATIENT_FOR) return false;
        passed.add(some[0].id);
        continue;
      }
      for (const entry of some) {
        const answer = reply.answers.find(one => one?.id === entry.id);
        const next = settled(entry, answer);
        if (answer) answers.set(entry.id, answer);
        if (next) await store.replace(next); else passed.add(entry.id);
      }
    }
  }

  /**
   * Sends everything that waits, in the order of its numbers; one at a time over all tabs. Resolves with the answers and whether all went;
   * when the link breaks it stops, and everything stays.
   */
  const drain = () => alone("trivet.send", async () => {
    const answers = new Map();
    try {
      return { all: await round(answers), answers };
    } catch (broken) {
      return { all: false, answers, broken };
    }
  });

  /** Offers what was acknowledged before to a service that says which of the ids it lacks, as one restored from an older copy does. */
  async function offer(lacking) {
    const kept = await store.inState(KEPT);
    if (kept.length === 0) return 0;
    const missing = new Set(await lacking(kept.map(entry => entry.id)));
    for (const entry of kept) if (missing.has(entry.id)) await store.replace({ ...entry, state: WAITING, again: true });
    return missing.size;
  }

  /** A record that stepped aside waits again, for somebody who may send it now. */
  const again = async id => {
    const entry = await store.find(id);
    if (entry?.state === ASIDE) await store.replace({ ...entry, state: WAITING });
  };

  return { save, drain, offer, again };
}
