import { say } from "/words.js";
import { check, checkBadge, enter, leave, onBadge } from "./who.js";
import { go } from "./go.js";

/** Signing in and out on any page, with a network and without. A form is never sent by the browser itself, which could only show an error without one. */
const PATIENCE_MS = 4000;

function problem(form, text) {
  const place = document.querySelector("[data-problem]") ?? Object.assign(document.createElement("p"), { className: "verdict breached" });
  place.dataset.problem = "";
  place.setAttribute("role", "alert");
  place.textContent = text;
  place.hidden = false;
  if (!place.isConnected) form.before(place);
  form.elements.pin.value = "";
  form.elements.pin.focus();
}

/** Signs a person in at the service, or by what this tablet knows where none answers; the reason why not, empty when the person is in. */
async function signedIn(id, address, proof, alone) {
  try {
    const answer = await fetch(address, { method: "POST", body: new URLSearchParams(proof), signal: AbortSignal.timeout(PATIENCE_MS) });
    if (answer.status >= 502 && answer.status <= 504) throw new Error("no service behind the address");
    if (!answer.ok || !answer.redirected) return await answer.text() || say("refused");
    enter(id);
    location.href = new URL(answer.url).pathname;
    return "";
  } catch (absent) {
    const refused = await alone();
    if (refused) return refused;
    enter(id, true);
    go("/work");
    return "";
  }
}

/** Signs a person in by PIN. */
async function signIn(form) {
  const id = form.dataset.person ?? location.pathname.split("/").pop(), pin = form.elements.pin.value;
  form.inert = true;
  const refused = await signedIn(id, "/session/pin/" + id, { pin }, () => check(id, pin).catch(() => say("pin_not_known_here")));
  if (!refused) return;
  const page = new DOMParser().parseFromString(refused, "text/html");
  form.inert = false;
  problem(form, page.querySelector("[role=alert]")?.textContent ?? (page.body.children.length ? say("refused") : refused));
}

/** Signs a person in by a badge that was scanned. */
async function scanned(text) {
  const id = onBadge(text);
  const refused = id && await signedIn(id, "/session/badge", { badge: text }, () => checkBadge(text).catch(() => say("j_that_is_no_badge")));
  if (refused) refuse(refused);
}

function refuse(text) {
  const place = document.querySelector("[data-badge-problem]") ?? Object.assign(document.createElement("p"), { className: "verdict breached" });
  place.dataset.badgeProblem = "";
  place.setAttribute("role", "alert");
  place.textContent = text;
  document.querySelector("main").prepend(place);
}

/** A scanner that types like a keyboard: characters faster than a hand, ended by Enter, and nobody at a field. */
const FASTER_MS = 80;
let typed = "", typedAt = 0;
document.addEventListener("keydown", event => {
  if (event.target.closest?.("input, textarea, select") && !typed.startsWith("TB.")) return;
  const now = performance.now();
  if (now - typedAt > FASTER_MS) typed = "";
  typedAt = now;
  if (event.key === "Enter" && onBadge(typed)) {
    event.preventDefault();
    scanned(typed);
    typed = "";
  } else if (event.key.length === 1) typed += event.key;
});

/** Signs out, here and at the service when it can be reached. */
export async function signOut() {
  leave();
  await fetch("/session/end", { method: "POST", redirect: "manual", signal: AbortSignal.timeout(PATIENCE_MS) }).catch(() => null);
  go("/");
}

document.addEventListener("submit", event => {
  const form = event.target;
  if (form.dataset.pad === "pin") { event.preventDefault(); signIn(form); }
  if (form.getAttribute("action") === "/session/end") { event.preventDefault(); signOut(); }
});
