import { say } from "/words.js";
import { time } from "./clock.js";

const WRONG_MS = 60000;

/** A time in words, to the minute. */
function length(ms) {
  const minutes = Math.round(ms / 60000);
  return minutes < 60 ? say("minutes", minutes) : say("hours", Math.floor(minutes / 60), minutes % 60);
}

/** What waits on this tablet, always in sight: how many records and since when, what stepped aside, and whether the service answers. */
export function banner() {
  const place = document.querySelector("[data-waiting]");
  if (!place) return;
  addEventListener("trivet-outbox", event => {
    const { count, oldest, aside, photos, link } = event.detail;
    if (link) place.dataset.link = link;
    const minutes = oldest === null ? 0 : Math.max(0, Math.floor((Date.now() - oldest) / 60000)), parts = [];
    if (place.dataset.link === "refused") parts.push(say("tablet_refused"));
    if (place.dataset.link === "down") parts.push(say("no_network"));
    if (count > 0) parts.push(say("waiting", count, minutes));
    if (photos > 0) parts.push(say("photos_wait", photos));
    const off = time.offset();
    if (off !== null && Math.abs(off) > WRONG_MS) parts.push(off < 0 ? say("clock_ahead", length(-off)) : say("clock_behind", length(off)));
    if (aside > 0) parts.push(say("aside", aside));
    place.textContent = parts.join(" ");
    place.hidden = parts.length === 0;
    if (parts.length && !location.pathname.startsWith("/waiting")) {
      const link = document.createElement("a");
      link.href = "/waiting";
      link.textContent = say("show_waiting");
      place.append(" ", link);
    }
  });
}
