import { say as words } from "/words.js";
import { keep, flush, waiting } from "./records.js";
import { pad, doubt } from "./pad.js";
import { hold as holding, kept } from "./session.js";
import "./paper.js";
import "./swap.js";

const one = (name, root = document) => root.querySelector(name);
const all = (name, root = document) => [...root.querySelectorAll(name)];

/** A form marked data-record becomes one record; its fields' names are those of the data, a number where data-number stands. */
async function send(form, extra = {}) {
  const data = JSON.parse(form.dataset.data ?? "{}");
  for (const field of all("[data-food]", form)) if (field.value !== "") data.food = { ...data.food, [field.dataset.food]: field.value };
  for (const field of all("[name]", form)) {
    if (field.type === "radio" && !field.checked) continue;
    if (field.value === "" || field.dataset.skip !== undefined) continue;
    data[field.name] = field.dataset.number !== undefined ? Number(field.value) : field.dataset.list !== undefined ? field.value.split(" ") : field.value;
  }
  const more = {};
  for (const name of ["batch", "check", "instrument", "sheet", "source"]) if (form.dataset[name]) more[name] = form.dataset[name];
  const plan = form.dataset.plan ?? one("select[name=product]", form)?.selectedOptions[0]?.dataset.plan;
  if (plan) more.plan = JSON.parse(plan);
  const probe = one("[data-instrument]", form);
  if (probe) more.instrument = probe.value;
  return keep(form.dataset.record, { ...data, ...extra }, more);
}

function say(form, answer) {
  const place = one("[data-said]", form) ?? form.appendChild(document.createElement("p"));
  const verdict = answer?.verdict?.verdict ?? "unjudged";
  place.className = "verdict said " + (answer && answer.status >= 400 ? "breached" : verdict);
  place.setAttribute("role", "status");
  place.hidden = false;
  place.textContent = !answer ? words("kept_here")
    : answer.status >= 400 ? (answer.errors?.[0]?.message ?? answer.title ?? words("refused")) : (answer.verdict?.words || words("kept"));
  const ok = !answer || answer.status < 400;
  if (ok) kept();
  return ok;
}

/** A correction carries what the record should have said: another value, another time, or that it does not count. */
function corrected(form) {
  const extra = {};
  const value = one("[data-corrected-value]", form)?.value.trim().replace(",", ".");
  const time = one("[data-corrected-time]", form)?.value;
  if (one("[data-void]", form)?.checked) extra.void = true;
  else {
    if (value && value !== form.dataset.before) extra.data = { temperature: { value, unit: one("[data-unit]", form).value } };
    if (time && time !== form.dataset.time) extra.claimed_at = new Date(time).toISOString();
  }
  return extra;
}

for (const form of all("form[data-record]:not([data-reading])")) {
  form.addEventListener("submit", async event => {
    event.preventDefault();
    const extra = {};
    if (form.dataset.record === "batch-started") {
      const key = "trivet.code." + document.body.dataset.device;
      const number = Math.max(Number(localStorage.getItem(key)) || 0, Number(form.dataset.lastCode) || 0) + 1;
      localStorage.setItem(key, number);
      if (one("[name=product]", form).value === "unplanned") {
        extra.unplanned = true;
        extra.product = one("[data-unplanned]", form).value.trim() || "unplanned";
      }
      extra.code = document.body.dataset.device + "-" + String(number).padStart(4, "0");
      form.dataset.batch = (await import("./uuid7.js")).uuid7();
    }
    if (form.dataset.record === "split") {
      const { uuid7 } = await import("./uuid7.js");
      const hot = Number(one("[data-hot]", form).value), rest = Number(form.dataset.pieces) - hot;
      extra.parts = [{ batch: uuid7(), code: form.dataset.code + "-H", trays: 1, pieces: hot, purpose: "hot" }, { batch: uuid7(), code: form.dataset.code + "-C", trays: 1, pieces: rest, purpose: "cold" }];
    }
    if (form.dataset.correction !== undefined) Object.assign(extra, corrected(form));
    if (form.dataset.correction !== undefined && !extra.void && !extra.data && !extra.claimed_at) {
      const ask = one("[data-ask]", form);
      ask.hidden = false;
      return;
    }
    const answer = await send(form, extra);
    if (say(form, answer) && answer) location.href = form.dataset.record === "batch-started" ? "/batches/" + form.dataset.batch : form.dataset.then ?? location.href;
  });
}

for (const form of all("form[data-reading]")) {
  const field = one("[data-value]", form);
  const unit = one("[data-unit]", form);
  let held = null, sure = null, timer;
  pad(one("[data-keys]", form), field, one("[data-live]", form));
  const hold = one("[data-hold]", form);
  hold?.addEventListener("click", () => {
    let left = Number(hold.dataset.hold);
    clearInterval(timer);
    holding(true);
    timer = setInterval(() => {
      left -= 1;
      held = Number(hold.dataset.hold) - left;
      hold.textContent = left > 0 ? words("holding", left) : words("held", held);
      if (left <= 0) { clearInterval(timer); holding(false); }
    }, 1000);
  });
  form.addEventListener("submit", async event => {
    event.preventDefault();
    const last = form.dataset.last ? Number(form.dataset.last) : null;
    const seen = unit.value === "C" ? doubt(field.value, last, form.dataset.record, Number(one("[name=oven_air]", form)?.value || NaN)) : { value: field.value.trim().replace(",", ".") };
    const ask = one("[data-ask]", form);
    if (seen.refuse || (seen.ask && sure !== field.value)) {
      ask.hidden = false;
      ask.textContent = seen.refuse ?? words("press_again", seen.ask);
      sure = seen.ask ? field.value : null;
      return;
    }
    ask.hidden = true;
    clearInterval(timer);
    holding(false);
    const value = field.value.trim().replace(",", ".");
    const extra = { temperature: { value, unit: unit.value } };
    if (seen.ask) extra.confirmed_odd = true;
    if (hold) extra.held_seconds = held;
    const answer = await send(form, extra);
    if (say(form, answer)) {
      for (const part of all("[data-pad-part]", form)) part.hidden = true;
      one("[data-after]", form).hidden = false;
      scrollTo(0, 0);
    }
  });
}

for (const holder of all("form[data-pad=pin]")) pad(one("[data-keys]", holder), one("[name=pin]", holder), null);
for (const form of all("form[data-correction]")) if (one("[data-keys]", form)) pad(one("[data-keys]", form), one("[data-corrected-value]", form), one("[data-live]", form));

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
  let seen = document.body.dataset.number, soon;
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
if (document.body.dataset.device) { setInterval(listen, 20000); flush(); setInterval(flush, 15000); }
const note = one("[data-waiting]");
if (note && waiting() > 0) { note.hidden = false; note.textContent = words("waiting", waiting()); }
