import { impossible, meets } from "../lib/decimal.js";
import { say } from "/words.js";

/** What a range says of a reading: within both bounds, past one, or not judged when no number is in force. */
export function judgeRange(limit, reading) {
  if (!limit || !limit.inForce || impossible(reading)) return { verdict: "unjudged", words: say("j_not_judged", reading.text) };
  const met = (!limit.minimum || meets(limit.minimum, reading)) && (!limit.maximum || meets(limit.maximum, reading));
  if (!met) return { verdict: "breached", words: say("j_the_limit_is_this_is_probe", reading.text, limit.words, limit.breach) };
  const within = say("j_within", reading.text, limit.words);
  return limit.operating && !meets(limit.operating, reading)
    ? { verdict: "within", words: within + " " + say("j_past_the_operating_limit_adjust_and", limit.operating.words), adjust: true } : { verdict: "within", words: within };
}
