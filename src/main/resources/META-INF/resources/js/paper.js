import { keep } from "./records.js";
import { say } from "/words.js";
import { uuid7 } from "./uuid7.js";

/** A filled-in sheet becomes the records of one batch, each with the time that stands on the paper and the sheet's number. */
const form = document.querySelector("form[data-paper]");

/**
 * The moment of a clock time on the sheet's day. A time before the day's start belongs to the night after; and nothing is measured before
 * its batch began, so that an earlier clock time is past the next midnight or the day's start.
 */
function moment(day, clock, dayEnds, begun) {
  const at = new Date(day + "T" + clock + ":00");
  if (clock < dayEnds || (begun && at.toISOString() < begun)) at.setDate(at.getDate() + 1);
  return at.toISOString();
}

/** The records of the sheet, in the order of their time; a row without a time is left out. */
function rows() {
  const day = form.elements.day.value, ends = form.dataset.dayEnds;
  const start = form.querySelector("[data-row='batch-started'] [data-clock]").value;
  const begun = start ? moment(day, start, ends) : null;
  const list = [];
  for (const row of form.querySelectorAll("[data-row]")) {
    const clock = row.querySelector("[data-clock]").value;
    if (!clock) continue;
    const data = {};
    for (const field of row.querySelectorAll("[data-name]")) {
      if (field.value === "") continue;
      data[field.dataset.name] = field.dataset.number !== undefined ? Number(field.value)
        : field.dataset.name === "temperature" ? { value: field.value.trim().replace(",", "."), unit: form.elements.scale.value } : field.value;
    }
    list.push({ kind: row.dataset.row, at: moment(day, clock, ends, begun), data });
  }
  return list.sort((a, b) => a.at.localeCompare(b.at));
}

form?.addEventListener("submit", async event => {
  event.preventDefault();
  const said = form.querySelector("[data-said]");
  const batch = uuid7();
  const sheet = form.elements.sheet.value.trim();
  const more = { sheet, source: "paper", person: form.elements.measured_by.value, plan: JSON.parse(form.dataset.plan) };
  const key = "trivet.code." + document.body.dataset.device;
  const number = Math.max(Number(localStorage.getItem(key)) || 0, Number(form.dataset.lastCode) || 0) + 1;
  localStorage.setItem(key, number);
  let refused = null;
  for (const row of rows()) {
    const data = row.kind === "batch-started" ? { ...row.data, product: form.dataset.product, code: document.body.dataset.device + "-" + String(number).padStart(4, "0") } : row.data;
    const instrument = row.data.temperature ? form.elements.probe.value : undefined;
    const answer = await keep(row.kind, data, { ...more, batch, claimed_at: row.at, ...(instrument ? { instrument } : {}) });
    if (answer && answer.status >= 400) refused = answer.errors?.[0]?.message ?? answer.title;
  }
  await keep("note", { text: say("sheet_typed", sheet) }, { batch, sheet });
  said.hidden = false;
  said.className = "verdict said " + (refused ? "breached" : "unjudged");
  said.textContent = refused ?? said.dataset.kept;
  if (!refused) location.href = "/batches/" + batch;
});
