import { html } from "../../lib/html.js";
import { named, say, shown, told } from "/words.js";
import { batches } from "../fold.js";
import { planOf } from "../kit.js";
import { padForm, parts, valueAndUnit } from "./parts.js";

function readingsOf(unit, model) {
  return model.local.filter(record => record.kind === "unit-reading" && record.data.unit === unit.id);
}

export async function units(model) {
  const p = parts(model), shown = model.kit.units.filter(unit => unit.limit);
  const last = unit => { const own = readingsOf(unit, model).pop(); return own ? { text: p.value(own.data.temperature.value, own.data.temperature.unit), at: Date.parse(own.claimed_at), waits: own.state === "waiting" } : unit.last; };
  return { title: say("s_fridges_and_freezers"), body: html`<h1>${say("s_fridges_and_freezers")}</h1><p class="now">${say("s_twice_a_day_each_of_them")}</p>
<p class="keys" data-round="units" hidden><b>${say("s_you_are_on_a_round_of_2")}</b> <button class="key" data-end-round>${say("s_end_the_round")}</button></p>
${shown.length ? html`<p><a class="key" data-begin-round="units" href="/units/${shown[0].id}">${say("s_begin_a_round_of_all_of")}</a></p>` : ""}
${shown.map(unit => { const seen = last(unit);
    return html`<a class="task" href="/units/${unit.id}"><b>${unit.name}</b> <span>${seen ? say("s_at_2", seen.text, p.moment(seen.at)) : say("s_not_read_today")}</span> <span>${say("s_limit_4", model.kit.ranges[unit.limit]?.words ?? "–")}</span></a>`; })}` };
}

export async function unit(model, id) {
  const shown = model.kit.units.filter(one => one.limit), unit = shown.find(one => one.id === id);
  if (!unit) return null;
  const p = parts(model), following = shown[shown.indexOf(unit) + 1], inside = (await batches(model)).filter(b => b.unit === unit.id && b.life === "stored");
  return { title: unit.name, body: html`<h1>${unit.name}</h1>
<p class="keys" data-round="units" hidden><b>${say("s_you_are_on_a_round_of_2")}</b> <button class="key" data-end-round>${say("s_end_the_round")}</button></p>
${padForm({ form: p.form, kind: "unit-reading", attributes: { last: "" }, head: say("s_read_the_thermometer"), limit: model.kit.ranges[unit.limit]?.words ?? "–", minus: true,
    fields: html`<input type="hidden" name="unit" value="${unit.id}"><div class="pair">${valueAndUnit(say("s_value_with_for_below_zero"))}</div>`,
    after: html`<a class="key primary" href="${following ? "/units/" + following.id : "/units"}">${say("s_next_unit")}</a>` })}
${inside.length ? html`<section class="card"><h2>${say("s_it_was_warm_probe_the_food")}</h2>${inside.map(b => html`<p><a class="key" href="/batches/${b.id}/food">${b.code} ${told(b.title)}</a></p>`)}</section>` : ""}
<section class="card"><h2>${say("s_read_today")}</h2>${readingsOf(unit, model).map(record => html`<p>${p.time(Date.parse(record.claimed_at))} ${p.value(record.data.temperature.value, record.data.temperature.unit)} ${p.initials(record.person)} ${p.mark(record)} <a class="key small" href="/records/${record.id}/correct">${say("s_correct")}</a></p>`)}${unit.last ? html`<p>${p.moment(unit.last.at)} ${unit.last.text} ${p.verdict(unit.last.verdict)}</p>` : readingsOf(unit, model).length ? "" : html`<p>${say("s_nothing_yet")}</p>`}</section>` };
}

/** The two forms that note something as good or not. */
const goodOrNot = (p, kind, item, envelope) => html`${p.form(kind, { ...envelope, data: { item, good: true } }, html`<p data-said hidden></p><button class="key primary">${say("s_it_is_as_it_should_be")}</button>`)}
${p.form(kind, { ...envelope, data: { item, good: false } }, html`<p data-said hidden></p><label class="field">${say("s_what_is_not_as_it_should")} <input name="words" required></label><button class="key">${say("s_it_is_not_as_it_should")}</button>`)}
<p><a class="key" href="${envelope.then}">${say("s_go_on")}</a></p>`;

/** A control by the plan's own criterion, noted as good or not. */
export async function own(model, id, item) {
  const b = (await batches(model)).find(one => one.id === id), own = b && planOf(model.kit, b).own.find(one => one.id === item);
  if (!own) return null;
  return { title: told(own.title), body: html`<h1>${b.code} · ${told(own.title)}</h1><p class="now">${told(own.what)}</p><p>${told(own.how)}</p><p>${say("s_limit_3")} <b>${told(own.limit)}</b></p>
${goodOrNot(parts(model), "plan-check", item, { batch: b.id, plan: b.plan, then: "/batches/" + b.id })}` };
}

/** A prerequisite programme that is looked at, noted as good or not. */
export function programme(model, item) {
  const programme = model.kit.programme_texts.find(one => one.id === item), check = model.kit.programmes.find(one => one.subject === item);
  return programme && { title: told(programme.title), body: html`<h1>${told(programme.title)}</h1><p class="now">${told(programme.what)}</p>
${goodOrNot(parts(model), "programme-check", item, { check: check?.id, then: "/work" })}` };
}

/** The record of this tablet or of the kit that is to be corrected. */
export async function correct(model, id) {
  const p = parts(model), known = await batches(model), b = known.find(one => one.told.some(told => told.id === id));
  const mine = model.local.find(record => record.id === id), told = b?.told.find(one => one.id === id) ?? (mine && { kind: mine.kind, at: Date.parse(mine.claimed_at), person: mine.person, value: mine.data.temperature?.value, unit: mine.data.temperature?.unit });
  if (!told) return null;
  const field = new Date(told.at - new Date(told.at).getTimezoneOffset() * 60000).toISOString().slice(0, 19), then = b ? "/batches/" + b.id : mine?.data.unit ? "/units/" + mine.data.unit : "/work";
  return { title: say("s_correct_a_record"), body: html`<h1>${say("s_correct_a_record")}</h1><p class="now">${say("s_both_stay_visible_a_correction_that")}</p>
<p>${say("s_by_3", named("kind", told.kind), p.moment(told.at), p.initials(told.person))}${told.value ? html`: <b>${p.value(told.value, told.unit)}</b>` : ""}</p>
${p.form("correction", { correction: "", batch: b?.id, before: told.value ?? "", time: field, data: { of: id }, then }, html`<div class="two"><div>
${told.value ? html`<p class="live"><span data-live>–</span></p><label class="field">${say("s_it_should_read")} <input data-corrected-value data-skip inputmode="decimal" value="${told.value}" autocomplete="off"></label>
<label class="field">${say("s_unit")} <select data-unit data-skip><option value="C" ${told.unit === "F" ? "" : html`selected`}>${say("s_c")}</option><option value="F" ${told.unit === "F" ? html`selected` : ""}>${say("s_f")}</option></select></label>` : ""}
<label class="field">${say("s_it_was_at")} <input type="datetime-local" step="1" data-corrected-time data-skip value="${field}"></label>
<label class="field check"><input type="checkbox" data-void data-skip> ${say("s_it_does_not_count_at_all")}</label>
<label class="field">${say("s_why")} <input name="reason" required></label><p data-said hidden></p><p class="verdict unjudged" data-ask hidden role="alert">${say("s_nothing_is_changed_yet_give_another")}</p>
</div>${told.value ? html`<div><div class="pad" data-keys data-decimal="," data-minus hidden></div></div>` : ""}</div><button class="key primary">${say("s_keep_this_correction")}</button>`)}
<p><a class="key" href="${then}">${say("s_leave_it_as_it_is")}</a></p>` };
}

/** A photo of a batch. */
export async function photo(model, id) {
  const b = (await batches(model)).find(one => one.id === id);
  return b && { title: b.code, body: html`<h1>${b.code} · ${told(b.title)}</h1><p class="now">${say("s_take_a_photo")}</p>
<form data-photo data-batch="${b.id}"><label class="field">${say("s_photo")} <input type="file" accept="image/*" capture="environment" required></label><label class="field">${say("s_what_it_shows")} <input name="words" maxlength="200"></label><p data-said hidden></p><button class="key primary">${say("s_keep_this_photo")}</button></form>` };
}

/** Who is there: the tiles; the PIN of one of them. */
export const tiles = model => ({ title: say("s_who_are_you"), body: html`<h1>${model.kit.site.name}</h1>${model.kit.site.demo ? html`<p class="note">${say("s_this_is_the_demo_bakery_invented")}</p>` : ""}<p class="now">${say("s_who_are_you")}</p>
<div class="tiles">${model.kit.people.map(person => html`<a class="tile" href="/session/pin/${person.id}"><b>${person.initials}</b><span>${person.name}</span></a>`)}</div>` });

export function pin(model, id) {
  const person = model.kit.people.find(one => one.id === id);
  return person && { title: say("s_pin"), body: html`<h1>${person.name}</h1><p class="verdict breached" role="alert" data-problem hidden></p>
<form class="pad-form" data-pad="pin" data-person="${person.id}" data-digits="${person.digits ?? ""}"><label class="field">${say("s_pin")} <input name="pin" type="password" inputmode="numeric" pattern="[0-9]*" autocomplete="off" autofocus required></label><div class="pad" data-keys hidden></div><button class="key primary">${say("s_sign_in")}</button></form><p><a href="/">${say("s_not_me")}</a></p>` };
}

/** What waits on this tablet, and what stepped aside with its reason. */
export async function waiting(model, all, photos) {
  const p = model ? parts(model) : null, moment = at => p ? p.moment(at) : new Date(at).toLocaleString(), of = state => all.filter(entry => entry.state === state).sort((a, b) => a.seq - b.seq);
  const row = entry => { const record = JSON.parse(entry.body); return html`<tr><td>${entry.device} ${entry.seq}<td>${named("kind", entry.kind)}<td>${record.data.temperature ? html`${shown(record.data.temperature.value + " °" + record.data.temperature.unit)}` : ""}<td>${moment(Date.parse(record.claimed_at))}<td>${p ? p.initials(record.person) : record.person}</tr>`; };
  const waits = of("waiting"), aside = of("aside"), kept = of("kept"), unsent = photos.filter(photo => !photo.sent);
  return { title: say("s_waiting_here"), body: html`<h1>${say("s_waiting_here")}</h1><p class="now" data-count>${waits.length ? say("waiting_count", waits.length, moment(Math.min(...waits.map(entry => entry.saved_at)))) : aside.length ? say("aside", aside.length) : say("nothing_waits")}</p>
${unsent.length ? html`<p>${say("photos_wait", unsent.length)}</p>` : ""}<p class="verdict breached" data-refused hidden>${say("tablet_refused")}</p>${waits.length ? html`<p data-refused hidden><button class="key" data-review-all>${say("review_all")}</button></p>` : ""}<p><button class="key primary" data-send-now>${say("send_now")}</button></p><p class="note">${say("waiting_note")}</p>
${aside.length ? html`<h2>${say("aside_head")}</h2><p>${say("aside_note")}</p>${aside.map(entry => html`<section class="card" data-aside="${entry.id}"><h3>${named("kind", entry.kind)} ${entry.device} ${entry.seq}</h3><p class="verdict breached">${entry.answer?.title || say("refused_word")}</p>${entry.answer?.errors?.length ? html`<details><summary>${say("aside_details")}</summary>${entry.answer.errors.map(error => html`<p>${error.field}: ${error.message}</p>`)}</details>` : ""}<div class="wide" tabindex="0"><table class="sheet">${row(entry)}</table></div>
<div class="keys"><button class="key" data-act="again">${say("aside_again")}</button>${entry.batch ? html`<a class="key" href="/batches/${entry.batch}">${say("aside_anew")}</a>` : ""}<button class="key" data-act="review">${say("aside_review")}</button><button class="key" data-act="file">${say("aside_file")}</button></div></section>`)}` : ""}
${waits.length ? html`<h2>${say("waiting_list")}</h2><div class="wide" tabindex="0"><table class="sheet">${waits.map(row)}</table></div>` : ""}
${kept.length ? html`<details><summary>${say("kept_copies", kept.length)}</summary><div class="wide" tabindex="0"><table class="sheet">${kept.slice(-50).map(row)}</table></div></details>` : ""}` };
}

/** An address that this tablet cannot show by itself. */
export const absent = () => ({ title: say("needs_network"), body: html`<h1>${say("needs_network")}</h1><p class="now">${say("needs_network_words")}</p><p class="keys"><a class="key" href="/work">${say("s_today")}</a> <a class="key" href="/cooling">${say("s_cooling")}</a> <a class="key" href="/units">${say("s_fridges")}</a> <a class="key" href="/waiting">${say("s_waiting_here")}</a></p>` });

export const strange = () => ({ title: say("s_trivet"), body: html`<h1>${say("never_met")}</h1><p class="now">${say("never_met_words")}</p>` });

