import { html } from "../../lib/html.js";
import { named, say } from "/words.js";
import { doubtOf } from "../fold/probes.js";
import { padForm, parts, valueAndUnit } from "./parts.js";

/** The probes, and which of them may be used now. */
export function probes(model) {
  const shown = model.kit.probes.map(probe => ({ ...probe, doubt: doubtOf(model, probe.id, model.now) }));
  return { title: say("s_probes"), body: html`<h1>${say("s_probes")}</h1><p class="now">${say("s_check_each_one_every_week_in")}</p>
${shown.map(probe => html`<a class="task ${probe.doubt ? "past-due" : ""}" href="/probes/${probe.id}"><b>${probe.id}</b> <span>${probe.name}</span> ${probe.doubt ? html`<span class="verdict breached">${say("s_blocked_2")}</span>` : html`<span class="verdict within">${say("s_may_be_used")}</span>`}</a>`)}` };
}

/** The check of one probe in ice or in boiling water. */
export function probe(model, id) {
  const probe = model.kit.probes.find(one => one.id === id);
  if (!probe) return null;
  const p = parts(model), doubt = doubtOf(model, id, model.now), ranges = model.kit.ranges, own = model.local.filter(record => record.kind === "probe-check" && record.data.probe === id);
  return { title: say("s_probe_2", id), body: html`<h1>${id} · ${probe.name}</h1>${doubt ? html`<p class="verdict breached">${doubt}</p>` : ""}
${padForm({ form: p.form, kind: "probe-check", attributes: { last: "", instrument: id }, head: say("s_wait_until_it_stands_still_then"), minus: true,
    limit: `${say("s_in_ice")} ${ranges["probe-ice"]?.words ?? "–"}${say("s_in_boiling_water")} ${ranges["probe-boiling"]?.words ?? "–"}${say("s_water_boils_at_100_c_only")}`,
    fields: html`<input type="hidden" name="probe" value="${id}"><label class="field">${say("s_in_2")} <select name="method"><option value="ice">${say("s_ice_and_water")}</option><option value="boiling">${say("s_boiling_water")}</option></select></label><label class="field">${say("s_height_above_the_sea_m_for")} <input name="altitude_m" type="number" data-number inputmode="numeric"></label><label class="field">${say("s_or_the_pressure_there_hpa_not")} <input name="pressure_hpa" type="number" step="0.1" min="500" max="1100" data-number inputmode="decimal"></label><div class="pair">${valueAndUnit(say("s_value_with_for_below_zero"))}</div>`,
    after: html`<a class="key primary" href="/probes">${say("s_to_the_probes")}</a>` })}
<section class="card"><h2>${say("s_its_checks")}</h2>${own.length ? own.map(record => html`<p>${p.moment(Date.parse(record.claimed_at))} ${named("method", record.data.method)}: ${p.value(record.data.temperature?.value, record.data.temperature?.unit)} ${p.initials(record.person)} ${p.mark(record)}</p>`) : html`<p>${say("s_none_yet")}</p>`}</section>` };
}
