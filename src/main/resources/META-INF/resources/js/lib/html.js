/** Markup with everything put in made harmless; a piece of markup within stays markup, a list is joined. */
class Markup {
  constructor(text) { this.text = text; }
  toString() { return this.text; }
}

const harmless = value => value instanceof Markup ? value.text : Array.isArray(value) ? value.map(harmless).join("") : value === null || value === undefined || value === false ? ""
  : String(value).replace(/[&<>"']/g, sign => "&#" + sign.charCodeAt(0) + ";");

export const html = (parts, ...values) => new Markup(parts.reduce((text, part, i) => text + harmless(values[i - 1]) + part));
