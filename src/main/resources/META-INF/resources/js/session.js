import { signOut } from "./tablet/door.js";

/**
 * Who is signed in, and for how long. A round (all fridges, the trays that cool) stays signed in until it is ended or nobody
 * has touched the tablet for 60 s; after a single entry the tablet goes back to the tiles. A running hold is never idle.
 */
const IDLE_S = 60;
const AFTER_ENTRY_S = 20;
const ROUND = "trivet.round";
const KEPT = "trivet.kept";
let watching = false, started = false;
let touched = Date.now(), told = Date.now(), leaveAt = null, holding = false;

/** A hold runs, or has ended. */
export const hold = running => { holding = running; touched = Date.now(); };

/** An entry was kept; outside a round the tiles come back soon, unless somebody goes on. */
export function kept() {
  if (watching && !sessionStorage.getItem(ROUND)) { sessionStorage.setItem(KEPT, "1"); soon(); }
}

function soon() {
  leaveAt = Date.now() + AFTER_ENTRY_S * 1000;
}

async function leave() {
  sessionStorage.removeItem(ROUND);
  sessionStorage.removeItem(KEPT);
  leaveAt = null;
  touched = Date.now();
  await signOut();
}

function touch() {
  touched = Date.now();
  leaveAt = null;
  sessionStorage.removeItem(KEPT);
}

function tick() {
  const now = Date.now();
  if (holding) { touched = now; leaveAt = null; }
  const bar = document.querySelector("[data-leaving]");
  if (bar) {
    bar.hidden = leaveAt === null;
    if (leaveAt !== null) bar.querySelector("[data-seconds]").textContent = Math.max(0, Math.round((leaveAt - now) / 1000));
  }
  if (now - touched > IDLE_S * 1000 || (leaveAt !== null && now > leaveAt)) { leave(); return; }
  if (touched > told && now - told > 10000) { told = now; fetch("/session/alive", { method: "POST" }).catch(() => null); }
}

/** Whether somebody is signed in by PIN on this page, so that leaving it alone ends that. */
export function watch(somebody) {
  watching = somebody;
  touched = Date.now();
  if (!somebody) leaveAt = null;
  else if (sessionStorage.getItem(KEPT)) soon();
  if (started || !somebody) return;
  started = true;
  for (const what of ["pointerdown", "keydown", "input"]) addEventListener(what, touch, { passive: true });
  setInterval(() => { if (watching) tick(); }, 1000);
}

/** Makes the keys of a round work below an element. */
export function rounds(root) {
  for (const key of root.querySelectorAll("[data-begin-round]")) key.addEventListener("click", () => sessionStorage.setItem(ROUND, key.dataset.beginRound));
  for (const bar of root.querySelectorAll("[data-round]")) bar.hidden = sessionStorage.getItem(ROUND) !== bar.dataset.round;
  for (const key of root.querySelectorAll("[data-end-round]")) key.addEventListener("click", () => { sessionStorage.removeItem(ROUND); leave(); });
}
