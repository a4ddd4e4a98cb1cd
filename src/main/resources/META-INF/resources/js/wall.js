import { say } from "/words.js";

/**
 * The sheet on the wall: keeps the screen awake, sounds for what is due, past due or raised, and says once, in order, what came due while it slept.
 * A browser plays nothing before somebody has touched the page; the daily test does that and proves that the sounds are heard.
 */
const SLEPT_MS = 120000, ALARM_EVERY_MS = 60000;
const SOUNDS = { due: [[660, 0, 0.25]], past: [[660, 0, 0.25], [660, 0.4, 0.25]], alarm: [[880, 0, 0.3], [1100, 0.35, 0.3], [1320, 0.7, 0.5]] };
let audio = null, lock = null, before = null, rangAt = 0;

/** Plays one of the three sounds; resolves when it has been played. */
function play(name) {
  audio ??= new AudioContext();
  audio.resume();
  for (const [pitch, after, length] of SOUNDS[name]) {
    const tone = audio.createOscillator(), gain = audio.createGain(), at = audio.currentTime + after;
    tone.frequency.value = pitch;
    gain.gain.setValueAtTime(0.4, at);
    tone.connect(gain).connect(audio.destination);
    tone.start(at);
    tone.stop(at + length);
  }
  return new Promise(played => setTimeout(played, 1400));
}

/** Plays the three, one after the other. */
export async function playAll() {
  for (const name of Object.keys(SOUNDS)) await play(name);
}

/** What is to be sounded when the counts went from one state to another; null for silence. */
export function sounding(was, now, silentFor) {
  if (now.alarms > 0 && (!was || now.alarms > was.alarms || silentFor >= ALARM_EVERY_MS)) return "alarm";
  if (was && now.past > was.past) return "past";
  if (was && now.due > was.due) return "due";
  return null;
}

function state() {
  const part = document.querySelector("[data-wall-state]").dataset;
  return { past: Number(part.past), due: Number(part.due), alarms: Number(part.alarms) };
}

function listen() {
  const now = state(), name = sounding(before, now, Date.now() - rangAt);
  before = now;
  if (!name || !audio) return;
  rangAt = Date.now();
  play(name);
}

async function awake() {
  const place = document.querySelector("[data-awake]");
  try {
    lock = await navigator.wakeLock.request("screen");
    place.textContent = say("stays_awake");
    lock.addEventListener("release", () => { place.textContent = say("may_sleep"); });
  } catch (refused) {
    place.textContent = say("may_sleep");
  }
}

/** What came due while the screen slept: asked once for each sleep, shown until somebody has read it. */
async function woken(since) {
  const answer = await fetch("/wall/missed.json?since=" + since, { headers: { "Trivet-Unattended": "1" } }).catch(() => null);
  if (!answer?.ok) return false;
  const list = await answer.json(), place = document.querySelector("[data-missed]");
  if (list.length) {
    document.querySelector("[data-missed-list]").append(...list.map(one => Object.assign(document.createElement("li"), { textContent: one.time + " " + one.words })));
    place.hidden = false;
  }
  return true;
}

export function wall() {
  if (document.body.dataset.wall === undefined) return;
  const KEY = "trivet.wall";
  const beat = async () => {
    const now = Date.now(), last = Number(localStorage.getItem(KEY) ?? now);
    if (now - last > SLEPT_MS && !await woken(last)) return;
    localStorage.setItem(KEY, now);
    listen();
  };
  document.querySelector("[data-missed-read]").addEventListener("click", () => { document.querySelector("[data-missed]").hidden = true; document.querySelector("[data-missed-list]").replaceChildren(); });
  document.querySelector("[data-sound-play]").addEventListener("click", async () => {
    await playAll();
    for (const key of ["heard", "silent"]) document.querySelector(`[data-sound-${key}]`).hidden = false;
  });
  for (const heard of [true, false]) document.querySelector(`[data-sound-${heard ? "heard" : "silent"}]`).addEventListener("click", async event => {
    const { keep } = await import("./records.js");
    await keep("sound-tested", { heard }, { person: document.body.dataset.person || "wall" });
    event.target.closest("section").querySelector("[data-sound-untested]")?.remove();
    for (const key of ["heard", "silent"]) document.querySelector(`[data-sound-${key}]`).hidden = true;
  });
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible") { awake(); beat(); } });
  setInterval(beat, 5000);
  awake();
  beat();
}
