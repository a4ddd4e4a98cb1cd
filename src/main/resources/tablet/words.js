/* Put after the sentences by the service. The language is the page's; on the tablet's own page it is that of whoever stands there. */
const COMMA = ["es", "pl", "it"];
let spoken = words, tag = "en";
const apart = value => /^[+-]?\d+(\.\d+)? °[CF]$/.test(value) ? "\u2066" + value + "\u2069" : value;
const number = value => tag === "ar" ? apart(value) : COMMA.includes(tag) && typeof value === "string" ? value.replace(/^([+-]?\d+)\.(\d+)( °[CF])?$/, "$1,$2$3") : value;
const filled = (form, values) => form.replace(/\{(\d)\}/g, (all, i) => number(values[i]) ?? "");
/** A sentence with its values in place. */
export const say = (key, ...values) => filled(spoken[key] ?? words[key] ?? key, values);
/** The sentence of a family and a name; the bare name where there is none. */
export const named = (family, name) => spoken[family + "." + name] ?? words[family + "." + name] ?? name;
/** A number, alone or with its unit, as the language writes it. */
export const shown = text => number(String(text));
let texts = {};
/** Learns what the texts of plans are told as, by language. */
export const know = all => { texts = all ?? {}; };
/** A text of a plan, in the language of whoever stands here where it was translated. */
export const told = text => String(text).split(" · ").map(part => texts[tag]?.[part] ?? part).join(" · ");
/** The tag for dates and times; digits are Western ones. */
export const dates = () => tag === "en" ? "en-GB" : tag + "-u-nu-latn";
/** Speaks another language from now on; stays with the present one when its sentences cannot be had. */
export async function speak(other) {
  if (other === tag) return;
  try {
    spoken = other === "en" ? words : (await import("/words/" + other + ".js")).default;
    tag = other;
    document.documentElement.lang = other;
    document.documentElement.dir = other === "ar" ? "rtl" : "ltr";
  } catch (absent) { /* Without a network and never kept: the present language stays. */ }
}
/** The language that this browser's pages were last in. */
export const last = () => sessionStorage.getItem("trivet.spoken") ?? "en";
const page = document.documentElement.dataset.language;
if (page) sessionStorage.setItem("trivet.spoken", page);
await speak(page ?? last());
