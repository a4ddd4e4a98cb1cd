import { say } from "/words.js";

/** The number pad: our own keys, the value live in large figures. Everything also works with a keyboard. */
export function pad(holder, field, shown) {
  const draw = () => { if (shown) shown.textContent = field.value || "–"; };
  const keys = ["1", "2", "3", "4", "5", "6", "7", "8", "9", ...(holder.dataset.decimal === undefined ? [] : [holder.dataset.decimal]), "0", "⌫"];
  if (keys.length === 11) keys.splice(9, 0, "");
  if (holder.dataset.minus !== undefined) keys.push("-");
  for (const key of keys) {
    if (key === "") {
      holder.append(document.createElement("span"));
      continue;
    }
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = key;
    if (key === "⌫") button.setAttribute("aria-label", say("delete_digit"));
    button.addEventListener("click", () => {
      field.value = key === "⌫" ? field.value.slice(0, -1) : field.value + key;
      draw();
    });
    holder.append(button);
  }
  holder.hidden = false;
  field.addEventListener("input", draw);
  draw();
}

/** What is wrong with a typed temperature, as a sentence, or a question to be answered with yes. */
export function doubt(text, last, kind, oven) {
  const typed = text.trim().replace(",", ".").replace("−", "-");
  if (!/^-?\d{1,4}(\.\d{1,3})?$/.test(typed)) return { refuse: say("type_a_number") };
  const value = Number(typed);
  if (value > 120 && value <= 1200) return { refuse: say("did_you_mean", typed + " °C", (value / 10).toFixed(1)) };
  if (value > 120 || value < -40) return { refuse: say("cannot_be", typed + " °C") };
  if (kind === "cooling-reading" && last !== null && value > last + 1) return { ask: say("warmer", typed, last) };
  if (kind === "cook-reading" && value > oven) return { ask: say("above_oven", typed) };
  return { value: typed };
}
