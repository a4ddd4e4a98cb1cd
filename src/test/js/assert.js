export function ok(condition, words = "") { if (!condition) throw new Error("not so: " + words); }
export function equal(seen, wanted, words = "") { if (seen !== wanted) throw new Error(`${words} expected ${JSON.stringify(wanted)} and was ${JSON.stringify(seen)}`); }

/** Random numbers from 0 to 1 that come again with the same seed. */
export function random(seed) {
  let state = seed * 2654435761 % 4294967296 || 1;
  return () => { state ^= state << 13; state >>>= 0; state ^= state >>> 17; state ^= state << 5; state >>>= 0; return state / 4294967296; };
}
