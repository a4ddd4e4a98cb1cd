import { sha256 } from "../lib/canonical.js";
import { save } from "../records.js";
import { photoStore } from "./store.js";
import { say } from "/words.js";
import { go } from "./go.js";

const LONGEST_SIDE = 1600, QUALITY = 0.8;

/** A picture made small: its longer side at most 1600 pixels, as a JPEG. */
export async function shrunk(file) {
  const picture = await createImageBitmap(file), scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const canvas = new OffscreenCanvas(Math.round(picture.width * scale), Math.round(picture.height * scale));
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas.convertToBlob({ type: "image/jpeg", quality: QUALITY });
}

/** Keeps a photo and the record that names it. The record is kept even where there is no room for the picture. */
export async function keepPhoto(file, batch, words) {
  const blob = await shrunk(file), hash = await sha256(await blob.arrayBuffer());
  let stored = true;
  await photoStore.put({ sha256: hash, blob, batch, sent: null }).catch(() => { stored = false; });
  const { sent } = await save("photo", { sha256: hash, bytes: blob.size, type: blob.type, ...(words ? { words } : {}), ...(stored ? {} : { lost: true }) }, { batch });
  return { hash, stored, sent };
}

document.addEventListener("submit", async event => {
  const form = event.target;
  if (form.dataset.photo === undefined) return;
  event.preventDefault();
  const said = form.querySelector("[data-said]");
  form.inert = true;
  const kept = await keepPhoto(form.querySelector("[type=file]").files[0], form.dataset.batch, form.elements.words.value.trim()).catch(() => null);
  form.inert = false;
  said.hidden = false;
  said.textContent = kept === null ? say("photo_unreadable") : kept.stored ? say("kept") : say("photo_no_room");
  if (kept?.stored) go("/batches/" + form.dataset.batch);
});
