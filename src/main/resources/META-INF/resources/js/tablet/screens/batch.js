import { html } from "../../lib/html.js";
import { named, say, told } from "/words.js";
import { derived } from "../../lib/canonical.js";
import { batches, over } from "../fold.js";
import { doubtOf } from "../fold/probes.js";
import { planOf } from "../kit.js";
import { padForm, parts, valueAndUnit } from "./parts.js";

export async function begin(model) {
  const { kit } = model, p = parts(model);
  return { title: say("s_start_a_batch"), body: html`<h1>${say("s_start_a_batch")}</h1>
${p.form("batch-started", { "last-code": kit.last_code }, html`<p class="now">${say("s_what_is_it")}</p>
<label class="field">${say("s_product")} <select name="product" required>${kit.plans.map(plan => html`<option value="${plan.product}" data-plan="${JSON.stringify(plan.ref)}">${told(plan.title)}</option>`)}<option value="unplanned">${say("s_not_in_a_plan_judged_by")}</option></select></label>
<label class="field">${say("s_if_it_is_in_no_plan")} <input data-unplanned data-skip maxlength="60"></label>
<label class="field">${say("s_line")} <select name="line"><option value="wheat">${say("s_wheat")}</option><option value="gluten-free">${say("s_gluten_free")}</option></select></label>
<div class="two"><label class="field">${say("s_trays")} <input name="trays" type="number" inputmode="numeric" min="1" value="2" data-number required></label>
<label class="field">${say("s_pieces")} <input name="pieces" type="number" inputmode="numeric" min="1" value="24" data-number required></label></div>
<label class="field">${say("s_oven")} <select name="oven">${p.options(p.units("OVEN"))}<option value="">${say("s_not_in_the_oven_yet")}</option></select></label>
<p data-said hidden></p><button class="key primary">${say("s_begin_this_batch")}</button>`)}` };
}

/** The big key of the page: where it leads, or the record that it sends. */
function big(b) {
  const at = "/batches/" + b.id + "/";
  return ({ core: { words: say("j_big_core"), link: at + "core" }, cooling: { words: say("j_big_cooling"), link: at + "cooling" }, hot: { words: say("j_big_hot"), link: at + "hot" }, reheat: { words: say("j_big_core"), link: at + "reheat" },
    food: { words: say("j_big_food"), link: at + "food" }, "back-in-oven": { words: say("j_big_back"), record: "back-in-oven" }, "out-of-oven": { words: say("j_big_out"), record: "out-of-oven" },
    deviation: b.deviations.length ? { words: say("j_answer_the_deviation"), link: "/deviations/" + b.deviations[0].id } : null })[b.act] ?? null;
}

export async function batch(model, id) {
  const all = await batches(model), b = all.find(one => one.id === id);
  if (!b) return null;
  const p = parts(model), plan = planOf(model.kit, b), key = big(b), base = { batch: b.id, plan: b.plan }, fridges = p.options(p.units("FRIDGE", "FREEZER"));
  const away = await derived(b.id + "/put-away"), field = (name, label) => html`<label class="field">${label} <input name="${name}" required></label>`;
  const store = (primary = false) => p.form("put-away", { ...base, check: away }, html`<div class="two"><label class="field">${say("s_put_away_in")} <select name="unit">${fridges}</select></label><label class="field">${say("s_use_by_2")} <input name="use_by" type="date" value="${b.use_by ?? plan.use_by}" required></label></div><button class="key ${primary ? "primary" : ""}">${say("s_put_away")}</button>`);
  return { title: b.code, follow: true, body: html`<h1>${b.code} · ${told(b.title)}${b.unplanned ? html` <span class="verdict unjudged">${say("s_unplanned_2")}</span>` : ""}</h1>
<p class="now">${b.next}</p>
${all.filter(one => one.of?.id === b.id).map(one => html`<p><a class="key" href="/batches/${one.id}">${one.code} ${one.next}</a></p>`)}
<p>${say("s_trays_pieces_begun_by", named("line", b.line), b.trays, b.pieces, p.moment(b.started), p.initials(b.by))} ${named("life", b.life)}${b.holds.length ? html` · <span class="verdict breached">${say("s_on_hold_2")}</span>` : ""}${b.use_by ? html` ${say("s_use_by", b.use_by)}` : ""}</p>
${b.holds.map(hold => html`<p class="note">${say("s_hold_since", p.moment(hold.since), hold.words)}</p>`)}
<p>${say("s_core_2")} ${p.verdict(b.cook_verdict)} ${say("s_cooling_2")} ${p.verdict(b.cooling_verdict)}</p>
<p data-said hidden></p>
${key?.link ? html`<a class="key primary" href="${key.link}">${key.words}</a>` : key?.record ? p.form(key.record, base, html`<button class="key primary">${key.words}</button>`) : ""}${b.act === "put-away" ? store(true) : ""}
${b.curve?.readings.length ? html`<div class="wide" tabindex="0"><table class="sheet"><caption>${say("s_cooling_run", b.run)}</caption><thead><tr><th>${say("s_time")}<th>${say("s_temperature")}<th>${say("s_what_it_says")}</tr></thead>${b.curve.readings.map(r => html`<tr><td>${p.time(r.at)}<td>${p.value(r.value, r.unit)}<td>${r.words}</tr>`)}</table></div>` : ""}
${b.curve ? b.curve.stages.map(stage => html`<p>${p.verdict(stage.verdict)} ${stage.words}</p>`) : ""}
${over(b) ? "" : html`<section class="card"><h2>${say("s_record")}</h2>
<div class="keys"><a class="key" href="/batches/${b.id}/core">${say("s_core")}</a> <a class="key" href="/batches/${b.id}/cooling">${say("s_cooling")}</a> <a class="key" href="/batches/${b.id}/food">${say("s_food_in_the_fridge")}</a> <a class="key" href="/batches/${b.id}/hot">${say("s_kept_hot")}</a> <a class="key" href="/batches/${b.id}/reheat">${say("s_core_after_a_reheat")}</a>
${p.form("out-of-oven", base, html`<button class="key">${say("s_out_of_the_oven")}</button>`)}${p.form("back-in-oven", base, html`<button class="key">${say("s_back_in_the_oven")}</button>`)}</div>
${p.form("moved", base, html`<div class="row"><label class="field">${say("s_moved_to")} <select name="place">${p.options(p.units("COOLING_RACK", "BLAST_CHILLER", "FRIDGE"))}</select></label><button class="key">${say("s_moved")}</button></div>`)}
${b.act === "put-away" ? "" : store()}
${p.form("gone", base, html`<div class="row"><label class="field">${say("s_gone")} <select name="how"><option value="sold">${say("s_sold")}</option><option value="dispatched">${say("s_dispatched")}</option><option value="eaten">${say("s_eaten")}</option></select></label><label class="field">${say("s_pieces_empty_all_that_is_left")} <input name="pieces" type="number" min="1" data-number></label>${b.holds.length ? html`<p class="note">${say("on_hold_not_for_sale")}</p>` : html`<button class="key">${say("s_gone")}</button>`}</div>`)}
${b.holds.length || b.deviations.length || b.of || b.hot ? "" : p.form("split", { ...base, pieces: b.pieces, code: b.code }, html`<div class="row"><label class="field">${say("s_part_sold_hot_pieces")} <input type="number" min="1" max="${b.pieces}" data-hot data-skip required></label><button class="key">${say("s_split")}</button></div>`)}
${p.form("held", base, html`<div class="row">${field("reason", say("s_hold_because"))}<button class="key">${say("s_hold")}</button></div>`)}
${b.reheat_offered ? p.form("reheat-begun", base, html`<div class="row"><p class="note">${say("s_reheat_once_only_and_soon_toxins")}</p><button class="key">${say("s_reheat_begun")}</button></div>`) : ""}
${p.form("destroyed", base, html`<div class="row">${field("reason", say("s_destroyed_because"))}<button class="key">${say("s_destroyed")}</button></div>`)}
${p.form("struck-out", base, html`<div class="row">${field("reason", say("s_strike_out_because"))}<button class="key">${say("s_strike_out")}</button></div>`)}
<p><a class="key" href="/batches/${b.id}/photo">${say("s_take_a_photo")}</a></p></section>`}
${b.holds.length ? html`<p class="note">${say("second_person_needs_network")}</p>` : ""}
<section class="card"><h2>${say("s_checks")}</h2><div class="wide" tabindex="0"><table class="sheet"><thead><tr><th>${say("s_due")}<th>${say("s_check")}<th>${say("s_state")}<th>${say("s_who_has_it")}</tr></thead>${b.checks.map(check => html`<tr><td>${p.time(check.due)}<td>${check.key.startsWith("own-") ? html`<a class="key small" href="/batches/${b.id}/own/${check.key.replace(/^own-/, "").replace(/-\d+$/, "")}">${told(check.label)}</a>` : named("check", check.key.replace(/-\d+$/, ""))}<td>${named("state", check.state)}<td>${check.handed ? p.initials(check.handed) : ""}</tr>`)}</table></div></section>
${b.deviations.length ? html`<section class="card"><h2>${say("s_deviations")}</h2>${b.deviations.map(d => html`<p><a href="/deviations/${d.id}">${d.words}</a> <span class="verdict breached">${named("deviation", d.state)}</span></p>`)}</section>` : ""}
<section class="card wide" tabindex="0" id="history"><h2>${say("s_every_record")}</h2><table class="sheet"><thead><tr><th>${say("s_measured")}<th>${say("s_what")}<th>${say("s_value")}<th>${say("s_by")}<th>${say("s_marks")}<th>${say("s_correct_it")}</tr></thead>
${b.told.map(told => html`<tr><td>${p.moment(told.at)}<td>${named("kind", told.kind)}<td>${told.value ? html`${p.value(told.value, told.unit)}` : ""} ${told.words}<td>${p.initials(told.person)}<td>${p.mark(told)}<td>${told.kind === "correction" ? "" : html`<a class="key small" href="/records/${told.id}/correct">${say("s_correct")}</a>`}</tr>`)}</table></section>` };
}

const NAMES = { core: ["cook-reading", "core-cook"], cooling: ["cooling-reading", "cooling"], food: ["food-reading", "chilled-storage"], reheat: ["reheat-reading", "reheat"], hot: ["hot-hold-reading", "hot-holding"] };
const HEADS = { core: () => say("s_core_of_the_thickest_piece"), reheat: () => say("s_core_of_the_thickest_piece"), food: () => say("s_core_of_the_food"), hot: () => say("s_core_of_what_is_kept_hot"), cooling: () => say("s_core_while_it_cools") };

export async function reading(model, id, kind) {
  const b = (await batches(model)).find(one => one.id === id);
  if (!b) return null;
  const { kit } = model, p = parts(model), plan = planOf(kit, b), cook = kind === "core" || kind === "reheat", rows = cook ? plan[kind]?.rows ?? [] : [];
  const limit = cook ? plan[kind]?.words : kind === "cooling" ? kit.stages.map(stage => stage.words).join("; ") : kind === "food" && plan.storage ? say("j_which_its_use_by_rests_on", plan.storage.words) : kit.ranges[NAMES[kind][1]]?.words;
  const hold = Math.max(0, ...rows.map(row => Number(row.seconds)).filter(seconds => seconds < 60)), next = b.checks.find(check => check.key.startsWith(kind === "hot" ? "hot-" : "cool-") && !check.taken);
  const last = b.cooling[b.cooling.length - 1], known = kit.probes.map(probe => ({ ...probe, blocked: doubtOf(model, probe.id, model.now) })), probes = known.map(probe => html`<option value="${probe.id}">${probe.id} ${probe.name}${probe.blocked ? html` ${say("s_blocked")}` : ""}</option>`);
  return { title: b.code, body: html`<h1>${b.code} · ${told(b.title)}</h1>${padForm({ form: p.form, kind: NAMES[kind][0], head: HEADS[kind](), limit: limit || say("j_no_rulebook_is_confirmed_nothing_is"),
    attributes: { batch: b.id, plan: b.plan, check: kind === "core" ? await derived(b.id + "/core") : next?.id ?? await derived(b.id + "/" + kind), last: kind === "cooling" && last?.unit === "C" ? last.value : "" },
    fields: html`<div class="pair">${valueAndUnit(say("s_value"))}<label class="field">${say("s_probe")} <select data-instrument>${probes}</select></label></div>
${known.filter(probe => probe.blocked).map(probe => html`<p class="note">${probe.blocked}</p>`)}
${cook ? html`<label class="field">${say("s_piece")} <input name="piece" type="number" min="1" value="${b.cook.length + 1}" data-number></label><button type="button" data-hold="${hold}">${say("s_start_the_hold_of_s", hold)}</button>` : ""}`,
    after: html`<a class="key primary" href="/batches/${b.id}">${say("s_go_on")}</a> <p class="keys"><a class="key" href="/batches/${b.id}/${kind}">${say("s_another_piece")}</a> <a class="key" href="/batches/${b.id}#history">${say("s_correct_this")}</a> <a class="key" href="/cooling">${say("s_next_tray_cooling")}</a></p>`,
    note: html`<p class="note">${say("s_the_limit_defers_to_local_law")}</p>` })}` };
}
