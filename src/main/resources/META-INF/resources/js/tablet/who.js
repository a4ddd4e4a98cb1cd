import { shelf } from "./store.js";
import { alone } from "./sender.js";
import { model } from "./kit.js";
import { time } from "./clock.js";
import { say } from "/words.js";

/**
 * Who stands at this tablet. With a network the service checks the PIN; without one this tablet does, against the slow salted hash that it took along.
 * Wrong tries are counted on its disk, so that neither a new page nor a new start forgets them.
 */
const ALLOWED = 5, MINUTE = 60000, LONGEST = 30;
const HERE = "trivet.person";

export const here = () => JSON.parse(sessionStorage.getItem(HERE) ?? "null");
export const enter = (id, offline = false) => sessionStorage.setItem(HERE, JSON.stringify({ id, offline }));
export const leave = () => { for (const name of [HERE, "trivet.round", "trivet.kept"]) sessionStorage.removeItem(name); };

const bytes = text => Uint8Array.from(atob(text), sign => sign.charCodeAt(0));

async function matches(pin, secret) {
  const key = await crypto.subtle.importKey("raw", new TextEncoder().encode(pin), "PBKDF2", false, ["deriveBits"]);
  const derived = new Uint8Array(await crypto.subtle.deriveBits({ name: "PBKDF2", hash: "SHA-256", salt: bytes(secret.salt), iterations: secret.iterations }, key, 256)), wanted = bytes(secret.hash);
  return derived.length === wanted.length && derived.reduce((differ, byte, i) => differ | byte ^ wanted[i], 0) === 0;
}

/** Checks a PIN without a network. Resolves with null when it is right, else with the sentence to show. */
export const check = (id, pin) => proved(id, pin, "pin", say("j_that_is_not_the_pin_try"));

/** Whose badge a text claims to be; null for a text that is none. */
export const onBadge = text => /^TB\.(.+)\.[0-9a-z]+$/.exec(text)?.[1] ?? null;

/** Checks the text of a badge without a network, as a PIN is checked. */
export const checkBadge = text => proved(onBadge(text), text, "badge", say("j_that_is_no_badge"));

const proved = (id, text, by, refusal) => alone("trivet.pin", async () => {
  const known = await model(), person = known?.kit.people.find(one => one.id === id);
  if (!person?.[by]) return by === "pin" ? say("pin_not_known_here") : refusal;
  if (person.ends && known.now >= person.ends) return say("pin_ended");
  const name = "wrong." + id, wrong = await shelf.get(name) ?? { count: 0, at: 0 };
  const wait = wrong.count < ALLOWED ? 0 : Math.min(LONGEST, 2 ** Math.min(10, wrong.count - ALLOWED)) * MINUTE, left = wrong.at + wait - time.now();
  if (wait > 0 && left > 0 && left <= wait) return say("j_too_many_wrong_tries_wait_min", Math.floor(left / MINUTE) + 1);
  if (await matches(text, person[by])) {
    await shelf.put(name, { count: 0, at: 0 });
    return null;
  }
  await shelf.put(name, { count: wrong.count + 1, at: time.now() });
  return refusal;
});
