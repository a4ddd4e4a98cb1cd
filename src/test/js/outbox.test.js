import { outbox, WAITING, KEPT, ASIDE } from "/js/tablet/outbox.js";
import { sha256 } from "/js/lib/canonical.js";
import { store } from "/js/tablet/store.js";
import { equal, ok, random } from "/test/assert.js";

/** A disk in memory that keeps what was written and forgets what was not, as a crash does. */
function memory() {
  const entries = new Map(), last = new Map();
  const inOrder = state => [...entries.values()].filter(entry => entry.state === state).sort((a, b) => a.seq - b.seq).map(entry => ({ ...entry }));
  return { last: async device => last.get(device) ?? 0,
    append: async entry => { ok(!entries.has(entry.id), "an id is never written over"); entries.set(entry.id, { ...entry }); last.set(entry.device, entry.seq); },
    replace: async entry => { entries.set(entry.id, { ...entry }); }, find: async id => entries.get(id), inState: async state => inOrder(state), all: async () => [...entries.values()],
    waiting: async (most, without) => inOrder(WAITING).filter(entry => !without.has(entry.id)).slice(0, most) };
}

/** A service that keeps each id once, may lose its answer after the commit, be away, or find a record that it refuses or breaks on. */
function service(draw, keptFirst = new Map()) {
  const kept = keptFirst, order = [];
  const post = async bodies => {
    const fate = draw();
    if (fate < 0.2) throw new Error("no network");
    if (fate < 0.25) return { status: 503, answers: [] };
    const answers = [];
    for (const body of bodies) {
      const record = JSON.parse(body), hash = await sha256(body);
      if (record.data.poison) { answers.push({ id: record.id, status: 422, title: "refused" }); continue; }
      if (record.data.breaks) return { status: 500, answers: [] };
      const before = kept.get(record.id);
      if (!before) { kept.set(record.id, { body, hash, number: kept.size + 1 }); order.push(record.device_seq); }
      answers.push({ id: record.id, status: before ? 200 : 201, sha256: hash, receive_number: kept.get(record.id).number });
    }
    if (fate < 0.45) throw new Error("the answer was lost after the commit");
    return { status: 200, answers: fate < 0.5 ? answers.slice(0, Math.floor(answers.length / 2)) : answers };
  };
  return { post, kept, order };
}

const locks = () => { const chains = new Map(); return (name, work) => { const next = (chains.get(name) ?? Promise.resolve()).then(work, work); chains.set(name, next.catch(() => null)); return next; }; };
const record = (seq, data = {}) => ({ id: "00000000-0000-7000-8000-" + String(seq).padStart(12, "0"), device: "A", device_seq: seq, kind: "note", data });

export async function nothing_is_lost_doubled_or_out_of_order_whatever_happens() {
  for (let seed = 1; seed <= 120; seed++) {
    const draw = random(seed), disk = memory(), far = service(draw), saved = [];
    let box = outbox({ store: disk, post: far.post, hash: sha256, alone: locks(), now: () => 0 });
    for (let step = 0; step < 40; step++) {
      const what = draw();
      if (what < 0.5) saved.push((await box.save("A", seq => record(seq, { poison: draw() < 0.05 }))).id);
      else if (what < 0.75) await box.drain();
      else if (what < 0.85) await Promise.all([box.drain(), box.drain(), box.save("A", seq => record(seq)).then(entry => saved.push(entry.id))]);
      else if (what < 0.95) box = outbox({ store: disk, post: far.post, hash: sha256, alone: locks(), now: () => 0 });
      else await box.offer(async ids => ids.filter(id => !far.kept.has(id)));
    }
    for (let again = 0; again < 400 && (await disk.inState(WAITING)).length > 0; again++) await box.drain();
    equal((await disk.inState(WAITING)).length, 0, "seed " + seed + ": everything went");
    const all = await disk.all();
    equal(all.length, new Set(saved).size, "seed " + seed + ": nothing is lost on the tablet");
    for (const entry of all) ok(entry.state === ASIDE ? JSON.parse(entry.body).data.poison && !far.kept.has(entry.id) : far.kept.get(entry.id)?.body === entry.body, "seed " + seed + ": " + entry.id + " " + entry.state);
    equal(far.order.join(), [...far.order].sort((a, b) => a - b).join(), "seed " + seed + ": the order of the tablet");
    equal(all.map(entry => entry.seq).sort((a, b) => a - b).join(), all.map((entry, i) => i + 1).join(), "seed " + seed + ": numbers without a gap");
  }
}

export async function a_record_that_breaks_the_service_holds_nobody_up_and_stays() {
  const disk = memory(), far = service(() => 1), box = outbox({ store: disk, post: far.post, hash: sha256, alone: locks(), now: () => 0 });
  for (let i = 1; i <= 9; i++) await box.save("A", seq => record(seq, i === 4 ? { breaks: true } : i === 6 ? { poison: true } : {}));
  await box.drain();
  equal(far.kept.size, 3, "at first it is given another chance");
  await box.drain();
  const sent = await box.drain();
  equal(sent.all, false);
  equal(far.kept.size, 7);
  equal((await disk.inState(WAITING)).map(entry => entry.seq).join(), "4");
  equal((await disk.inState(ASIDE)).map(entry => entry.seq).join(), "6");
}

export async function an_acknowledgement_with_another_hash_is_none() {
  const disk = memory(), box = outbox({ store: disk, alone: locks(), hash: sha256, now: () => 0, post: async bodies => ({ status: 200, answers: bodies.map(body => ({ id: JSON.parse(body).id, status: 201, sha256: "0".repeat(64), receive_number: 1 })) }) });
  await box.save("A", seq => record(seq));
  await box.drain();
  equal((await disk.inState(WAITING)).length, 1);
}

export async function a_service_restored_from_an_older_copy_is_given_what_it_lacks() {
  const disk = memory(), first = service(() => 1);
  let far = first;
  const box = outbox({ store: disk, post: bodies => far.post(bodies), hash: sha256, alone: locks(), now: () => 0 });
  for (let i = 0; i < 6; i++) await box.save("A", seq => record(seq));
  await box.drain();
  far = service(() => 1, new Map([...first.kept].slice(0, 3)));
  equal(await box.offer(async ids => ids.filter(id => !far.kept.has(id))), 3);
  await box.drain();
  equal(far.kept.size, 6);
  equal((await disk.inState(KEPT)).length, 6);
}

export async function the_disk_of_a_browser_keeps_records_and_numbers_together_and_never_writes_over() {
  const box = outbox({ store, post: async () => { throw new Error("away"); }, hash: sha256, alone: (name, work) => navigator.locks.request(name, work), now: () => 5 });
  await Promise.all(Array.from({ length: 25 }, () => box.save("T", seq => ({ ...record(seq), id: crypto.randomUUID(), device: "T" }))));
  const waits = await store.waiting(100, new Set());
  equal(waits.map(entry => entry.seq).join(), waits.map((entry, i) => i + 1).join());
  equal(await store.last("T"), 25);
  let refused = false;
  await store.append({ ...waits[0], body: "other" }).catch(() => { refused = true; });
  ok(refused && (await store.find(waits[0].id)).body === waits[0].body, "the first stays");
}
