/**
 * Who is signed in, and for how long. A round (all fridges, the trays that cool) stays signed in until it is ended or nobody
 * has touched the tablet for 60 s; after a single entry the tablet goes back to the tiles. A running hold is never idle.
 */
const IDLE_S = 60;
const AFTER_ENTRY_S = 20;
const ROUND = "trivet.round";
const KEPT = "trivet.kept";
const person = document.body.dataset.person;
const byPassword = document.body.dataset.owner !== undefined;
let touched = Date.now(), told = Date.now(), leaveAt = null, holding = false;

/** A hold runs, or has ended. */
export const hold = running => { holding = running; touched = Date.now(); };

/** An entry was kept; outside a round the tiles come back soon, unless somebody goes on. */
export function kept() {
  if (person && !byPassword && !sessionStorage.getItem(ROUND)) { sessionStorage.setItem(KEPT, "1"); soon(); }
}

function soon() {
  leaveAt = Date.now() + AFTER_ENTRY_S * 1000;
}

async function leave() {
  sessionStorage.removeItem(ROUND);
  sessionStorage.removeItem(KEPT);
  await fetch("/session/end", { method: "POST" }).catch(() => null);
  location.href = "/";
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

if (person && !byPassword) {
  for (const what of ["pointerdown", "keydown", "input"]) addEventListener(what, touch, { passive: true });
  setInterval(tick, 1000);
  if (sessionStorage.getItem(KEPT)) soon();
}
for (const key of document.querySelectorAll("[data-begin-round]")) key.addEventListener("click", () => sessionStorage.setItem(ROUND, key.dataset.beginRound));
for (const bar of document.querySelectorAll("[data-round]")) bar.hidden = sessionStorage.getItem(ROUND) !== bar.dataset.round;
for (const key of document.querySelectorAll("[data-end-round]")) key.addEventListener("click", () => { sessionStorage.removeItem(ROUND); leave(); });
