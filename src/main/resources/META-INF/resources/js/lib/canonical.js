/** The canonical form of a JSON value by RFC 8785: names sorted by UTF-16 units, numbers and text as ECMAScript writes them. */
export function canonical(value) {
  if (value === null || typeof value !== "object") return JSON.stringify(value);
  if (Array.isArray(value)) return "[" + value.map(canonical).join(",") + "]";
  return "{" + Object.keys(value).filter(name => value[name] !== undefined).sort()
    .map(name => JSON.stringify(name) + ":" + canonical(value[name])).join(",") + "}";
}

const hex = buffer => [...new Uint8Array(buffer)].map(byte => byte.toString(16).padStart(2, "0")).join("");

/** The SHA-256 of a text's UTF-8 bytes, or of a buffer, in hexadecimal. */
export async function sha256(input) {
  return hex(await crypto.subtle.digest("SHA-256", typeof input === "string" ? new TextEncoder().encode(input) : input));
}

/** A UUIDv8 from the SHA-256 of a name (RFC 9562, 5.8), the same as the service makes of it. */
export async function derived(name) {
  const digits = (await sha256(name)).slice(0, 32);
  const variant = (parseInt(digits[16], 16) & 3 | 8).toString(16);
  return `${digits.slice(0, 8)}-${digits.slice(8, 12)}-8${digits.slice(13, 16)}-${variant}${digits.slice(17, 20)}-${digits.slice(20)}`;
}
