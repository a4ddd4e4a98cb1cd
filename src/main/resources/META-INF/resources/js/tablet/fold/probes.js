import { temperature } from "../../lib/decimal.js";
import { judgeRange } from "../../judge/range.js";
import { say } from "/words.js";
import { written } from "./days.js";

/**
 * Why a probe is not to be trusted at a moment, as a sentence; empty when it is. A check that this tablet recorded counts as the service would count it;
 * one in boiling water at a height or a pressure waits for the service, which knows at what temperature the water boiled.
 */
export function doubtOf({ kit, local }, probe, at) {
  if (!probe) return "";
  const last = local.filter(record => record.kind === "probe-check" && record.data.probe === probe && Date.parse(record.claimed_at) <= at).pop();
  if (last) {
    const read = temperature(last.data.temperature);
    if (last.data.method === "boiling" && (last.data.altitude_m !== undefined || last.data.pressure_hpa !== undefined)) return say("probe_boiling_waits", probe);
    if (read && judgeRange(kit.ranges["probe-" + last.data.method], read).verdict === "within") return "";
    return say("j_probe_failed_its_check_of_what", probe, written(kit.site.zone).moment(Date.parse(last.claimed_at)), read ? ", " + read.text : "");
  }
  const known = kit.probes.find(one => one.id === probe);
  if (!known) return "";
  return known.blocked || (known.blocked_from !== null && at >= known.blocked_from ? known.blocked_then : "");
}
