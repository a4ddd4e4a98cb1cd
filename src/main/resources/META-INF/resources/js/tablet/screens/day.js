import { html } from "../../lib/html.js";
import { named, say, told } from "/words.js";
import { aged, open, stateOf } from "../checks.js";
import { batches, known as everything, over } from "../fold.js";
import { here } from "../who.js";
import { parts } from "./parts.js";

const sort = check => check.key.startsWith("own-") ? "own" : check.key.startsWith("programme-") ? "programme" : check.key.replace(/-\d+$/, "");
const item = check => check.key.replace(/^own-/, "").replace(/-\d+$/, "");
const link = check => ({ unit: "/units/" + check.subject, "re-check": "/units/" + check.subject, own: "/batches/" + check.subject + "/own/" + item(check), programme: "/programmes/" + check.subject, core: "/batches/" + check.subject + "/core",
  "put-away": "/batches/" + check.subject, hot: "/batches/" + check.subject + "/hot" })[sort(check)] ?? "/batches/" + check.subject + "/cooling";
const task = check => ({ own: () => say("s_look_and_note_it"), programme: () => say("s_look_and_note_it"), core: () => say("s_probe_the_core"), "put-away": () => say("s_put_away_2"), cool: () => say("s_measure_it_cooling"),
  hot: () => say("s_probe_what_is_kept_hot") })[sort(check)]?.() ?? say("s_read_the_thermometer_2");

/** The checks of a unit, with what this tablet read since; a reading counts for the check in whose time it falls. */
export function unitChecks(unit, model) {
  const readings = model.local.filter(record => record.kind === "unit-reading" && record.data.unit === unit.id).map(record => ({ id: record.id, at: Date.parse(record.claimed_at) }));
  let from = -Infinity;
  return unit.checks.map(check => {
    const taken = check.taken ? null : readings.find(reading => reading.at >= from && reading.at < check.missed);
    if (check.key !== "re-check") from = check.missed;
    return taken ? { ...check, taken: taken.id, state: stateOf(check.due, taken.at, check.missed, model.now) } : aged(check, model.now);
  });
}

/** Everything that is due now or later, by its time, of batches, units and programmes. */
export function dueList(model, known) {
  const programmes = model.kit.programmes.map(check => aged(model.local.some(record => record.kind === "programme-check" && record.data.item === check.subject) ? { ...check, taken: "here", state: "taken" } : check, model.now));
  return [...known.filter(batch => !over(batch)).flatMap(batch => batch.checks), ...model.kit.units.flatMap(unit => unitChecks(unit, model)), ...programmes]
    .filter(check => open(check) || check.state === "not yet due").sort((a, b) => a.due - b.due);
}

const taskOf = (check, p) => html`<a class="task ${check.state === "past due" ? "past-due" : ""}" href="${link(check)}"><time>${p.time(check.due)}</time><span><b>${told(check.label)}</b> ${task(check)}</span><span>${p.past(check.due)}${check.handed ? html` ${say("s_has_it", p.initials(check.handed))}` : ""}</span></a>`;

const batchTask = b => html`<a class="task" href="/batches/${b.id}"><b>${b.code}</b> <span>${told(b.title)}${b.unplanned ? html` ${say("s_unplanned")}` : ""}</span> <span>${named("life", b.life)}</span> <span>${b.next}</span></a>`;

export async function work(model) {
  const p = parts(model), known = await batches(model), due = dueList(model, known);
  const now = due.filter(open), next = due.filter(check => !open(check)).slice(0, 8), held = known.filter(b => b.holds.length && !over(b));
  return { title: say("s_today"), follow: true, body: html`<h1>${say("s_today_s_work")}</h1>
<p class="now">${now.length ? say("s_to_do_now_the_oldest_first", now.length) : say("s_nothing_is_due_now")}</p>
${handed(model).map(one => html`<section class="card"><p class="now">${one.to === here()?.id ? say("s_hands_you", p.name(one.from), one.batches) : say("s_hands_to", p.name(one.from), one.batches, p.name(one.to))}</p>${one.to === here()?.id ? p.form("shift-taken", { data: { of: one.id }, then: "/work" }, html`<p data-said hidden></p><button class="key primary">${say("s_i_take_them")}</button>`) : ""}</section>`)}
${now.map(check => taskOf(check, p))}
${held.length ? html`<h2>${say("s_on_hold_3")}</h2>${held.map(b => html`<a class="task past-due" href="/batches/${b.id}"><b>${b.code}</b> <span>${told(b.title)}</span> <span class="verdict breached">${say("s_on_hold_2")}</span> <span>${b.holds[0].words}</span></a>`)}` : ""}
<h2>${say("s_under_way")}</h2>
${known.filter(b => !over(b) && b.life !== "stored").map(batchTask)}${known.some(b => !over(b) && b.life !== "stored") ? "" : html`<p>${say("s_no_batch_is_under_way")}</p>`}
<h2>${say("s_next")}</h2>
${next.map(check => html`<p class="task"><time>${p.time(check.due)}</time><b>${told(check.label)}</b> <span>${named("check", sort(check))}</span></p>`)}${next.length ? "" : html`<p>${say("s_nothing_more_today")}</p>`}
<p><a class="key primary" href="/batches/new">${say("s_start_a_batch")}</a></p><p class="keys"><a class="key" href="/probes">${say("s_check_a_probe")}</a> <a class="key" href="/shift-end">${say("s_end_of_my_shift")}</a></p>` };
}

/** Hand-overs that nobody has taken, as far as this tablet knows. */
function handed(model) {
  const own = model.local.filter(record => record.kind === "shift-ended" && record.data.batches?.length).map(record => ({ id: record.id, from: record.person, to: record.data.to, batches: record.data.batches.length }));
  const taken = model.local.filter(record => record.kind === "shift-taken").map(record => record.data.of);
  return [...model.kit.handovers, ...own].filter(one => !taken.includes(one.id));
}

/** The end of a shift: what is under way, and to whom it goes. */
export async function shiftEnd(model) {
  const p = parts(model), left = (await batches(model)).filter(b => !over(b) && b.life !== "stored"), others = model.kit.people.filter(person => person.id !== here()?.id);
  return { title: say("s_end_of_my_shift"), body: html`<h1>${say("s_end_of_my_shift")}</h1>
${left.length ? html`<p class="now">${say("s_still_under_way_to_whom", left.length)}</p>${left.map(batchTask)}
${p.form("shift-ended", { "sign-out": "" }, html`<input type="hidden" name="batches" data-list value="${left.map(b => b.id).join(" ")}"><label class="field">${say("s_to")} <select name="to" required>${p.options(others)}</select></label><p data-said hidden></p><button class="key primary">${say("s_hand_them_over")}</button>`)}<p class="note">${say("s_hand_over_note")}</p>` : html`<p class="now">${say("s_nothing_under_way_you_may_go")}</p>`}
<p><a class="key" href="/work">${say("s_go_on")}</a></p>` };
}

export async function cooling(model) {
  const p = parts(model), known = (await batches(model)).filter(b => b.life === "cooling");
  return { title: say("s_cooling"), follow: true, body: html`<h1>${say("s_cooling_now")}</h1>
<p class="now">${known.length ? say("s_measure_the_one_that_is_nearest") : say("s_nothing_is_cooling")}</p>
${known.map(b => { const last = b.cooling[b.cooling.length - 1];
    return html`<a class="task" href="/batches/${b.id}/cooling"><b>${b.code}</b> <span>${told(b.title)}</span> <span>${last ? say("s_at_2", p.value(last.value, last.unit), p.time(last.at)) : say("s_not_measured_yet")}</span> <span>${b.next}</span></a>`; })}` };
}

export async function deviations(model) {
  const p = parts(model), found = await everything(model), all = [...found.batches.flatMap(b => b.deviations), ...found.units.matters].filter(matter => matter.state !== "closed").sort((a, b) => a.since - b.since);
  return { title: say("s_deviations"), body: html`<h1>${say("s_deviations")}</h1>
<p class="now">${all.length ? say("s_to_be_answered_or_closed", all.length) : say("s_none_is_open")}</p>
${all.map(d => html`<a class="task past-due" href="/deviations/${d.id}"><b>${told(d.label)}</b> <span>${p.moment(d.since)}</span> <span>${d.words}</span> <span class="verdict ${d.breach ? "breached" : "unjudged"}">${named("deviation", d.state)}</span></a>`)}` };
}

export async function deviation(model, id) {
  const p = parts(model), found = await everything(model), known = found.batches, d = [...known.flatMap(b => b.deviations), ...found.units.matters].find(matter => matter.id === id);
  if (!d) return null;
  const batch = known.find(b => b.id === d.subject), field = (name, label, needed = true) => html`<label class="field">${label} <input name="${name}" value="${d.answer[name] ?? ""}" ${needed ? html`required` : ""}></label>`;
  const ways = ["destroy", ...(["core-cook", "reheat"].includes(d.limit) ? ["back-in-oven"] : []), ...(d.limit === "cooling" && batch?.reheat_offered ? ["reheat"] : []), "use-otherwise", "release", "already-gone", "none-affected"];
  return { title: say("s_deviation", told(d.label)), body: html`<h1>${told(d.label)}: ${d.breach ? say("s_limit_breached") : say("s_could_not_be_judged")}</h1>
<p class="now">${d.words}</p><p>${p.moment(d.since)} <span class="verdict breached">${named("deviation", d.state)}</span></p>
${batch ? html`<p><a class="key" href="/batches/${batch.id}">${say("s_to_the_batch")}</a></p>` : ""}
<p>${say("s_the_plan_offers")} <b>${d.offers.map((offer, i) => html`${i ? html` ${say("s_or")} ` : ""}${named("offer", offer)}`)}</b></p>
${p.form("deviation-answer", { batch: batch?.id, plan: batch?.plan }, html`<input type="hidden" name="deviation" value="${d.id}">
${field("what_happened", say("s_what_happened"))}
<div class="row">${["trays", "pieces"].map((name, i) => html`<label class="field">${i ? say("s_pieces") : say("s_food_affected_trays")} <input data-food="${name}" data-skip type="number" min="0" value="${batch?.[name] ?? ""}"></label>`)}<label class="field">${say("s_kg")} <input data-food="kg" data-skip inputmode="decimal"></label></div>
${field("set_apart", say("s_set_apart_where"), false)}${field("cause", say("s_cause"))}${field("control_restored", say("s_control_restored_how_shown_by_which"))}
<label class="field">${say("s_what_becomes_of_the_food")} <select name="disposition">${ways.map(way => html`<option value="${way}" ${d.answer.disposition === way ? html`selected` : ""}>${named("disposition", way)}</option>`)}</select></label>
${field("told", say("s_who_was_told"), false)}${field("decided_by", say("s_decided_by_2"))}${field("evidence", say("s_on_what_evidence"), false)}${field("prevention", say("s_how_it_is_prevented"))}
<p data-said hidden></p><button class="key primary">${say("s_keep_this_answer")}</button>`)}
<p class="note">${say("s_reheating_does_not_make_food_safe")}</p><p class="note">${say("second_person_needs_network")}</p>` };
}
