import "./tablet/door.js";
import "./tablet/photos.js";
import "./paper.js";
import "./swap.js";
import { wire } from "./forms.js";
import { start } from "./tablet/sender.js";
import { refresh } from "./tablet/kit.js";
import { enter } from "./tablet/who.js";
import { banner } from "./tablet/banner.js";
import { worker } from "./tablet/worker.js";
import { rounds, watch } from "./session.js";
import { wall } from "./wall.js";
import { selfTest } from "./selftest.js";

const one = (name, root = document) => root.querySelector(name);
const page = document.body.dataset;

wire(document);
rounds(document);
watch(Boolean(page.person) && page.owner === undefined);
if (page.person && page.owner === undefined) enter(page.person);

document.querySelector("[data-print]")?.addEventListener("click", () => print());

/** What a page asks by itself keeps nobody signed in. */
const UNATTENDED = { headers: { "Trivet-Unattended": "1" } };

/** Parts that follow the day are fetched anew, unless somebody is typing. */
async function follow() {
  if (!one("[data-follow]") || document.activeElement?.matches("input, textarea, select")) return;
  const fresh = await fetch(location.href, UNATTENDED).then(r => r.text()).catch(() => null);
  const part = fresh && new DOMParser().parseFromString(fresh, "text/html").querySelector("[data-follow]");
  if (part) one("[data-follow]").replaceWith(document.importNode(part, true));
}
if (one("[data-follow]")) {
  setInterval(follow, 20000);
  let seen = page.number, soon;
  new EventSource("/events").addEventListener("message", event => {
    if (event.data !== seen) { clearTimeout(soon); soon = setTimeout(follow, 300); }
    seen = event.data;
  });
}

/** A check past due sounds on every open screen. */
async function listen() {
  const due = await fetch("/due.json", UNATTENDED).then(r => r.ok ? r.json() : { past: 0 }).catch(() => ({ past: 0 }));
  if (due.past > 0 && Number(sessionStorage.getItem("trivet.quiet") ?? 0) < Date.now()) {
    sessionStorage.setItem("trivet.quiet", Date.now() + 60000);
    const audio = new AudioContext(), tone = audio.createOscillator();
    tone.frequency.value = 880; tone.connect(audio.destination); tone.start(); tone.stop(audio.currentTime + 0.4);
  }
}

if (page.device || page.known !== undefined) {
  banner();
  worker();
  const take = () => refresh().catch(() => null);
  take();
  setInterval(take, 60000);
}
wall();
selfTest();
if (page.device) {
  if (page.wall === undefined) setInterval(listen, 20000);
  start();
}
