import { entering } from "../forms.js";
import { say } from "/words.js";

/** Registers the service worker. A new version waits until a person at the tiles, or one who was told, lets it take over, and never while somebody is at an entry. */
const idle = () => !entering.now && !document.querySelector("main form[data-record]");

function offer(worker) {
  if (document.querySelector("[data-update]")) return;
  const note = Object.assign(document.createElement("p"), { className: "note", textContent: say("new_version") + " " });
  note.dataset.update = "";
  const key = Object.assign(document.createElement("button"), { className: "key small", textContent: say("take_new_version") });
  key.addEventListener("click", () => { if (!entering.now) worker.postMessage("take over"); });
  note.append(key);
  document.querySelector("main").prepend(note);
}

export async function worker() {
  if (!("serviceWorker" in navigator)) return;
  const registration = await navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" }).catch(() => null);
  if (!registration) return;
  const first = !navigator.serviceWorker.controller;
  navigator.serviceWorker.addEventListener("controllerchange", () => { if (!first && idle()) location.reload(); });
  const waits = () => {
    const next = registration.waiting;
    if (!next || !navigator.serviceWorker.controller) return;
    if (location.pathname === "/" && idle()) next.postMessage("take over"); else offer(next);
  };
  waits();
  registration.addEventListener("updatefound", () => registration.installing?.addEventListener("statechange", waits));
  setInterval(() => registration.update().catch(() => null), 3600000);
}
