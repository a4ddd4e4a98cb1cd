import "./tablet/door.js";
import "./tablet/photos.js";
import { know, last, say, speak } from "/words.js";
import { wire, entering } from "./forms.js";
import { model, refresh } from "./tablet/kit.js";
import { start, flush, review, box } from "./tablet/sender.js";
import { photoStore, store } from "./tablet/store.js";
import { here } from "./tablet/who.js";
import { within } from "./tablet/go.js";
import { banner } from "./tablet/banner.js";
import { rounds, watch } from "./session.js";
import * as day from "./tablet/screens/day.js";
import * as batch from "./tablet/screens/batch.js";
import * as others from "./tablet/screens/others.js";
import * as probes from "./tablet/screens/probes.js";

/** The tablet's own page: it shows the day's addresses from what the tablet took along, whether or not anybody answers. */
const place = document.querySelector("[data-screen]");
const ROUTES = [
  [/^\/work$/, known => day.work(known)], [/^\/cooling$/, known => day.cooling(known)], [/^\/shift-end$/, known => day.shiftEnd(known)], [/^\/deviations$/, known => day.deviations(known)],
  [/^\/deviations\/([^/]+)$/, (known, id) => day.deviation(known, id)], [/^\/batches\/new$/, known => batch.begin(known)],
  [/^\/batches\/([^/]+)$/, (known, id) => batch.batch(known, id)], [/^\/batches\/([^/]+)\/photo$/, (known, id) => others.photo(known, id)],
  [/^\/batches\/([^/]+)\/(core|cooling|food|reheat|hot)$/, (known, id, kind) => batch.reading(known, id, kind)],
  [/^\/batches\/([^/]+)\/own\/([^/]+)$/, (known, id, item) => others.own(known, id, item)],
  [/^\/programmes\/([^/]+)$/, (known, item) => others.programme(known, item)], [/^\/probes$/, known => probes.probes(known)], [/^\/probes\/([^/]+)$/, (known, id) => probes.probe(known, id)],
  [/^\/units$/, known => others.units(known)], [/^\/units\/([^/]+)$/, (known, id) => others.unit(known, id)], [/^\/records\/([^/]+)\/correct$/, (known, id) => others.correct(known, id)]];
const OPEN = [[/^\/$/, known => others.tiles(known)], [/^\/session\/pin\/([^/]+)$/, (known, id) => others.pin(known, id)]];
let shownAt = 0;

/** The page's own words, in the language of whoever stands here. */
const LABELS = ["s_today", "s_cooling", "s_fridges", "s_deviations", "s_waiting_here", "s_sign_out", "s_back_to_the_tiles_in", "s_s_unless_you_go_on"];

async function screen(path) {
  const known = await model(), person = here();
  know(known?.kit.texts);
  await speak(known?.kit.people.find(one => one.id === person?.id)?.language ?? last());
  for (const label of document.querySelectorAll("[data-say]")) if (LABELS.includes(label.dataset.say)) label.textContent = say(label.dataset.say);
  const told = path === "/waiting" ? await others.waiting(known, await store.all(), await photoStore.all()) : null;
  if (told) return { told, known, person };
  if (!known) return { told: others.strange(), known, person };
  for (const [form, show] of OPEN) { const found = form.exec(path); if (found) return { told: show(known, ...found.slice(1)), known, person: null }; }
  if (!person) return { told: others.tiles(known), known, person: null };
  for (const [form, show] of ROUTES) { const found = form.exec(path); if (found) return { told: await show(known, ...found.slice(1)) ?? others.absent(), known, person }; }
  return { told: others.absent(), known, person };
}

/** Shows the present address. */
async function show(quietly = false) {
  const number = ++shownAt, { told, known, person } = await screen(location.pathname);
  if (number !== shownAt) return;
  const page = document.body.dataset;
  page.device = known?.kit.device ?? "";
  page.sequence = known?.kit.sequence ?? 0;
  page.person = person?.id ?? "";
  page.rulebook = known?.kit.rulebook ? JSON.stringify(known.kit.rulebook) : "";
  document.querySelector("[data-who]").textContent = known?.kit.people.find(one => one.id === person?.id)?.name ?? "";
  document.title = told.title + " " + say("s_trivet_2");
  place.innerHTML = told.body;
  place.dataset.follows = told.follow ?? "";
  entering.now = false;
  wire(place);
  rounds(place);
  watch(person !== null);
  if (!quietly) scrollTo(0, 0);
  if (location.hash) document.querySelector(location.hash)?.scrollIntoView();
}

async function go(address) {
  if (up && !here()) { location.href = address; return; }
  history.pushState(null, "", address);
  await show();
}
within(go);
addEventListener("popstate", () => show());

document.addEventListener("click", async event => {
  const link = event.target.closest("a[href^='/']"), act = event.target.closest("[data-act]");
  if (event.target.closest("[data-send-now]")) { await flush(true); return; }
  if (event.target.closest("[data-review-all]")) { for (const entry of await store.inState("waiting")) if (!await review(entry.id).catch(() => false)) break; await show(true); return; }
  if (act) { await aside(act.closest("[data-aside]").dataset.aside, act.dataset.act); return; }
  if (!link || event.ctrlKey || event.metaKey || link.target) return;
  event.preventDefault();
  if (linked()) location.href = link.getAttribute("href"); else go(link.getAttribute("href"));
});

/** Whether the service answers again, so that its own pages come back; only asked when nothing is known to the contrary. */
let up = false;
const linked = () => up && !here()?.offline;
addEventListener("trivet-outbox", event => { up = event.detail.link === "up" || (event.detail.link === undefined && up); if (up) navigator.serviceWorker?.controller?.postMessage("link up"); });

/** What is to be done with a record that was refused. */
async function aside(id, act) {
  if (act === "again") await box.again(id).then(() => flush(true));
  if (act === "review") await review(id).catch(() => null);
  if (act === "file") {
    const entry = await store.find(id), link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([entry.body], { type: "application/json" }));
    link.download = "record-" + entry.device + "-" + entry.seq + ".json";
    link.click();
    URL.revokeObjectURL(link.href);
    return;
  }
  await show(true);
}

banner();
await show();
addEventListener("trivet-outbox", async event => {
  if (location.pathname !== "/waiting") return;
  await show(true);
  for (const part of document.querySelectorAll("[data-refused]")) part.hidden = event.detail.link !== "refused";
});
setInterval(() => { if (place.dataset.follows && !document.activeElement?.matches("input, textarea, select")) show(true); }, 20000);
await start();
await refresh().catch(() => null);
