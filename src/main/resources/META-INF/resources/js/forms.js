import { say as words } from "/words.js";
import { save } from "./records.js";
import { pad, doubt } from "./pad.js";
import { hold as holding, kept } from "./session.js";
import { uuid7 } from "./uuid7.js";
import { go } from "./tablet/go.js";
import { ownVerdict } from "./tablet/verdict.js";
import { offer as thermometer, wedge } from "./tablet/thermometers.js";

const one = (name, root) => root.querySelector(name);
const all = (name, root) => [...root.querySelectorAll(name)];
/** How long a form waits for the service before it goes on; the record is on this tablet either way. */
const ANSWER_MS = 3000;
const soon = promise => Promise.race([promise, new Promise(resolve => setTimeout(resolve, ANSWER_MS, null))]);

/** Somebody is at an entry on this page: a new version of the screens does not take over meanwhile. */
export const entering = { now: false };

/** A form marked data-record becomes one record; its fields' names are those of the data, a number where data-number stands. */
function send(form, extra = {}) {
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
  return save(form.dataset.record, { ...data, ...extra }, more);
}

/** Says on a form what became of its record: the tablet's own word while the service is silent, the service's when it came, both where they differ. */
function say(form, answer, own) {
  const place = one("[data-said]", form) ?? form.appendChild(document.createElement("p"));
  const refused = answer && answer.status >= 400, theirs = answer?.verdict;
  const verdict = theirs?.verdict ?? own?.verdict ?? "unjudged";
  place.className = "verdict said " + (refused ? "breached" : verdict);
  place.setAttribute("role", "status");
  place.hidden = false;
  place.textContent = refused ? (answer.errors?.[0]?.message ?? answer.title ?? words("refused")) : answer ? (theirs?.words || words("kept")) : own ? own.words : words("kept_here");
  const beside = place.nextElementSibling?.matches("[data-beside]") ? place.nextElementSibling : document.createElement("p");
  beside.className = "note";
  beside.dataset.beside = "";
  const differ = own && theirs && !refused && theirs.verdict !== own.verdict;
  beside.textContent = differ ? words("verdicts_differ", own.words) : !answer && own ? words("own_verdict") : "";
  beside.hidden = beside.textContent === "";
  place.after(beside);
  if (!refused) kept();
  return !refused;
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

function begun(form, extra) {
  const key = "trivet.code." + document.body.dataset.device;
  const number = Math.max(Number(localStorage.getItem(key)) || 0, Number(form.dataset.lastCode) || 0) + 1;
  localStorage.setItem(key, number);
  if (one("[name=product]", form).value === "unplanned") {
    extra.unplanned = true;
    extra.product = one("[data-unplanned]", form).value.trim() || "unplanned";
  }
  extra.code = document.body.dataset.device + "-" + String(number).padStart(4, "0");
  form.dataset.batch = uuid7();
}

function split(form, extra) {
  const hot = Number(one("[data-hot]", form).value), rest = Number(form.dataset.pieces) - hot;
  extra.parts = [{ batch: uuid7(), code: form.dataset.code + "-H", trays: 1, pieces: hot, purpose: "hot" }, { batch: uuid7(), code: form.dataset.code + "-C", trays: 1, pieces: rest, purpose: "cold" }];
}

async function record(form) {
  if (form.inert) return;
  const extra = {};
  if (form.dataset.record === "batch-started") begun(form, extra);
  if (form.dataset.record === "split") split(form, extra);
  if (form.dataset.correction !== undefined) Object.assign(extra, corrected(form));
  if (form.dataset.correction !== undefined && !extra.void && !extra.data && !extra.claimed_at) {
    one("[data-ask]", form).hidden = false;
    return;
  }
  form.inert = true;
  const { sent } = await send(form, extra).catch(full => { form.inert = false; say(form, { status: 507, title: words("disk_full", full.message) }); throw full; });
  const answer = await soon(sent);
  form.inert = false;
  if (!say(form, answer)) return;
  if (form.dataset.signOut !== undefined) (await import("./tablet/door.js")).signOut();
  else go(form.dataset.record === "batch-started" ? "/batches/" + form.dataset.batch : form.dataset.then ?? location.pathname);
}

function reading(form) {
  const field = one("[data-value]", form), unit = one("[data-unit]", form), hold = one("[data-hold]", form);
  let held = null, sure = null, timer;
  pad(one("[data-keys]", form), field, one("[data-live]", form));
  wedge(form, field);
  thermometer(form, field, unit);
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
    if (form.inert) return;
    const last = form.dataset.last ? Number(form.dataset.last) : null;
    const seen = unit.value === "C" ? doubt(field.value, last, form.dataset.record, Number(one("[name=oven_air]", form)?.value || NaN)) : { value: field.value.trim().replace(",", ".") };
    const ask = one("[data-ask]", form);
    if (seen.refuse || (seen.ask && sure !== field.value)) {
      ask.hidden = false;
      ask.textContent = seen.refuse ?? words("press_again", seen.ask);
      sure = seen.ask ? field.value : null;
      return;
    }
    form.inert = true;
    ask.hidden = true;
    clearInterval(timer);
    holding(false);
    const extra = { temperature: { value: field.value.trim().replace(",", ".").replace("−", "-"), unit: unit.value } };
    if (seen.ask) extra.confirmed_odd = true;
    if (hold) extra.held_seconds = held;
    const { record, sent } = await send(form, extra).catch(full => { form.inert = false; say(form, { status: 507, title: words("disk_full", full.message) }); throw full; });
    const own = await ownVerdict(record).catch(() => null);
    form.inert = false;
    entering.now = false;
    const done = answer => {
      if (!say(form, answer, own)) return;
      for (const part of all("[data-pad-part]", form)) part.hidden = true;
      one("[data-after]", form).hidden = false;
      scrollTo(0, 0);
    };
    if (own || !navigator.onLine) done(null);
    const answer = await sent;
    if (answer || !own) done(answer);
  });
}

/** A PIN; where it is known how many digits it has, the last of them signs in. */
function pin(form) {
  const field = one("[name=pin]", form), full = () => { if (/^\d+$/.test(field.value) && field.value.length === Number(form.dataset.digits) && !form.inert) form.requestSubmit(); };
  pad(one("[data-keys]", form), field, null);
  field.addEventListener("input", full);
  one("[data-keys]", form).addEventListener("click", full);
}

/** Makes the forms below an element work. */
export function wire(root) {
  for (const form of all("form[data-record]:not([data-reading])", root)) form.addEventListener("submit", event => { event.preventDefault(); record(form); });
  for (const form of all("form[data-reading]", root)) reading(form);
  for (const form of all("form[data-pad=pin]", root)) pin(form);
  for (const form of all("form[data-correction]", root)) if (one("[data-keys]", form)) pad(one("[data-keys]", form), one("[data-corrected-value]", form), one("[data-live]", form));
  for (const form of all("form[data-record]", root)) form.addEventListener("input", () => { entering.now = true; });
  for (const keys of all("[data-keys]", root)) keys.addEventListener("click", () => { entering.now = true; });
}
