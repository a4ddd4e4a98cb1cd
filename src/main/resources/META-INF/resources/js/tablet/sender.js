import { canonical, sha256 } from "../lib/canonical.js";
import { outbox, WAITING, ASIDE, KEPT } from "./outbox.js";
import { store, shelf, photoStore } from "./store.js";
import { time } from "./clock.js";

/**
 * When the outbox is emptied: after a save, on opening, on waking, when the browser says that the network is back, and every 15 s while the page
 * is seen. Only here is the network asked; a failure waits longer each time, up to five minutes, and a tap on the counter asks at once.
 */
const PATIENCE_MS = 15000, EVERY_MS = 15000, LONGEST_MS = 300000, OFFER_MS = 600000, DAY_MS = 86400000;
const chain = new Map();
const tabs = "BroadcastChannel" in globalThis ? new BroadcastChannel("trivet") : null;
let failures = 0, notBefore = 0, metAt = -Infinity;

/** Runs one thing at a time over all tabs; without locks, over this one. */
export function alone(name, work) {
  if (navigator.locks) return navigator.locks.request(name, work);
  const next = (chain.get(name) ?? Promise.resolve()).then(work, work);
  chain.set(name, next.catch(() => null));
  return next;
}

async function post(bodies) {
  const clocks = time.said();
  const response = await fetch("/api/records", { method: "POST", headers: { "Content-Type": "application/json", "Trivet-Clock": [clocks.session, clocks.monotonic_ms, clocks.wall].join(";") },
    body: "[" + bodies.join(",") + "]", signal: AbortSignal.timeout(PATIENCE_MS) });
  const answers = response.ok ? await response.json() : [];
  return { status: response.status, answers: Array.isArray(answers) ? answers : [] };
}

export const box = outbox({ store, post, hash: sha256, alone, now: () => time.now() });

const json = (path, body) => fetch(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body), signal: AbortSignal.timeout(PATIENCE_MS) });

/** What waits on this tablet: how many, since when, how many stepped aside, and how many photos. */
export async function waiting() {
  const waits = await store.inState(WAITING), aside = await store.inState(ASIDE);
  const photos = (await photoStore.all()).filter(photo => !photo.sent).length;
  return { count: waits.length, oldest: waits.length ? Math.min(...waits.map(entry => entry.saved_at)) : null, aside: aside.length, photos };
}

/** Offers what was acknowledged before, now and then, and at once to a service that has fewer records than it once said. */
async function offer(number) {
  const kept = await store.inState(KEPT), last = await shelf.get("offered") ?? 0;
  if (Date.now() - last < OFFER_MS && !kept.some(entry => entry.receive_number > number)) return;
  await box.offer(async ids => (await (await json("/api/tablet/lacking", { ids })).json()).lacking);
  await shelf.put("offered", Date.now());
}

/** The name of this browser's store: another one under the same tablet means that what the first one held may be lost. */
const install = () => alone("trivet.install", async () => {
  const known = await shelf.get("install") ?? crypto.randomUUID();
  await shelf.put("install", known);
  return known;
});

/** Tells the service what this tablet holds, and learns its clock; the numbers told are never used again. */
async function meet(device) {
  const asked = performance.now(), waits = await waiting();
  if (asked - metAt < EVERY_MS - 1000) return "met";
  const response = await json("/api/tablet/met", { install: await install(), sequence: await store.last(device), waiting: waits.count + waits.aside, photos: waits.photos,
    oldest: waits.oldest === null ? null : new Date(waits.oldest).toISOString(), build: document.body.dataset.build ?? null, clock: time.said() });
  if (!response.ok) return response.status === 401 || response.status === 403 ? "refused" : null;
  const said = await response.json();
  time.contact(said.now, asked, performance.now());
  await store.raise(device, said.sequence);
  await offer(said.number);
  metAt = asked;
  return "met";
}

async function sendPhotos() {
  for (const photo of (await photoStore.all()).filter(one => !one.sent)) {
    const response = await fetch("/api/photos/" + photo.sha256, { method: "PUT", headers: { "Content-Type": photo.blob.type }, body: photo.blob, signal: AbortSignal.timeout(4 * PATIENCE_MS) });
    if (!response.ok) return;
    await photoStore.put({ ...photo, sent: time.now() });
  }
}

/** Tells this page and the other tabs what waits now. */
export async function tell(link) {
  const detail = { ...(await waiting()), link };
  dispatchEvent(new CustomEvent("trivet-outbox", { detail }));
  tabs?.postMessage(detail);
}
tabs?.addEventListener("message", event => dispatchEvent(new CustomEvent("trivet-outbox", { detail: event.data })));

/** Sends everything now, unless the last failure was too short ago. Resolves with the answers by id. */
export async function flush(atOnce = false) {
  const device = document.body.dataset.device;
  if (!device || (!atOnce && Date.now() < notBefore)) return new Map();
  let link = "up", answers = new Map();
  try {
    const met = await meet(device);
    if (met === "refused") link = "refused";
    else {
      const sent = await box.drain();
      answers = sent.answers;
      if (sent.broken) throw sent.broken;
      if (sent.all) await alone("trivet.photos", sendPhotos);
      await store.forget(time.now() - DAY_MS);
    }
    failures = 0;
    notBefore = 0;
  } catch (broken) {
    link = "down";
    metAt = -Infinity;
    failures += 1;
    notBefore = Date.now() + Math.min(LONGEST_MS, 1000 * 2 ** failures) * (0.5 + Math.random() / 2);
  }
  await tell(link);
  return answers;
}

/** Sends a record that was refused to the owner's review, as it is. */
export async function review(id) {
  const entry = await store.find(id);
  const response = await json("/api/tablet/review", { record: entry.body, reason: entry.answer?.errors?.[0]?.message ?? entry.answer?.title ?? "" });
  if (response.ok) await store.replace({ ...entry, state: "reviewed" });
  await tell("up");
  return response.ok;
}

/** Starts the regular sending; what an older version of these pages left waiting is taken over first, under its own id. */
export async function start() {
  const old = JSON.parse(localStorage.getItem("trivet.waiting") ?? "[]");
  for (const record of old) {
    const body = canonical(record);
    const entry = { id: record.id, device: record.device, seq: record.device_seq, kind: record.kind, batch: record.batch ?? null, body, sha256: await sha256(body), saved_at: time.now(), state: WAITING };
    if (!await store.find(record.id)) await store.append(entry).catch(() => null);
  }
  localStorage.removeItem("trivet.waiting");
  addEventListener("online", () => flush(true));
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible") flush(true); else time.remember(); });
  setInterval(() => { time.remember(); if (document.visibilityState === "visible") flush(); }, EVERY_MS);
  await flush(true);
}
