import { html } from "../../lib/html.js";
import { named, say, shown } from "/words.js";
import { written } from "../fold/days.js";

/** Pieces that several screens share: times of the site, people, verdicts, and forms that become records. */
export function parts(model) {
  const { kit } = model, { time, moment } = written(kit.site.zone);
  const initials = id => kit.people.find(person => person.id === id)?.initials ?? id;
  const name = id => kit.people.find(person => person.id === id)?.name ?? id;
  const value = (number, unit) => shown(number + " °" + unit);
  const verdict = word => html`<span class="verdict ${word}">${named("verdict", word)}</span>`;
  const units = (...kinds) => kit.units.filter(unit => kinds.includes(unit.kind));
  const past = at => { const minutes = Math.max(0, Math.floor((model.now - at) / 60000)); return minutes < 120 ? say("j_past_minutes", minutes) : say("j_past_hours", Math.floor(minutes / 60), minutes % 60); };
  const form = (kind, attributes, inside) => html`<form data-record="${kind}" ${Object.entries(attributes).filter(([, value]) => value !== null && value !== undefined).map(([name, value]) => html` data-${name}="${typeof value === "object" ? JSON.stringify(value) : value}"`)}>${inside}</form>`;
  const options = (list, chosen) => list.map(one => html`<option value="${one.id}" ${one.id === chosen ? html`selected` : ""}>${one.name}</option>`);
  const mark = told => told.state === "waiting" ? say("mark_waits") : told.state === "aside" ? say("mark_aside") : "";
  return { kit, time, moment, initials, name, value, verdict, units, past, form, options, mark };
}

/** The pad of a reading, as the service's page has it. */
export const padForm = ({ form, attributes, kind, head, limit, fields, after, note = "", minus = false, decimal = "," }) => form(kind, { ...attributes, reading: "" }, html`
<div class="two"><div>
<p class="now">${head}</p><p>${say("s_limit_3")} <b>${limit}</b></p>
<p class="live" aria-live="polite"><span data-live>–</span></p>
<p data-said hidden></p><p class="verdict unjudged" data-ask hidden role="alert"></p>
<div data-pad-part>${fields}</div>
</div><div data-pad-part><div class="pad" data-keys data-decimal="${decimal}" ${minus ? html`data-minus` : ""} hidden></div></div></div>
<div data-pad-part><button class="key primary">${say("s_keep_this_reading")}</button></div>
<div data-after hidden>${after}</div>${note}`);

export const valueAndUnit = label => html`<label class="field">${label} <input data-value data-skip inputmode="decimal" autocomplete="off"></label>
<label class="field">${say("s_unit")} <select data-unit data-skip><option value="C">${say("s_c")}</option><option value="F">${say("s_f")}</option></select></label>`;
