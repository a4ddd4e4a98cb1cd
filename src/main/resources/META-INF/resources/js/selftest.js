import { say } from "/words.js";

/** What works on this tablet, tried and said in words: trusted, works without a network, keeps what it is given, clock, camera, sound. */
const CLOCK_OK_MS = 60000;

function told(name, good, words, todo = "") {
  const row = document.querySelector(`[data-test=${name}]`), state = row.querySelector("[data-state]");
  state.replaceChildren(Object.assign(document.createElement("span"), { className: "verdict " + (good ? "within" : good === null ? "unjudged" : "breached"), textContent: words }));
  row.querySelector("[data-do]").textContent = good ? "" : todo;
}

const tests = {
  trusted: () => told("trusted", isSecureContext, isSecureContext ? say("test_yes") : say("test_no"), say("test_trusted_do")),
  offline: async () => {
    if (!navigator.serviceWorker) { told("offline", false, say("test_no"), say("test_trusted_do")); return; }
    const { worker } = await import("./tablet/worker.js");
    await worker();
    const ready = await Promise.race([navigator.serviceWorker.ready.then(() => true), new Promise(late => setTimeout(() => late(false), 20000))]);
    told("offline", ready, ready ? say("test_yes") : say("test_no"), say("test_offline_do"));
  },
  kept: async () => {
    const kept = await navigator.storage?.persist?.().catch(() => false) ?? false;
    told("kept", kept || null, kept ? say("test_yes") : say("test_perhaps"), say("test_kept_do"));
  },
  clock: async () => {
    const asked = performance.now(), answer = await fetch("/join/now.json").then(r => r.json()).catch(() => null);
    if (!answer) { told("clock", null, say("test_no_answer"), say("test_clock_do")); return; }
    const off = Date.now() - (answer.now + (performance.now() - asked) / 2), right = Math.abs(off) < CLOCK_OK_MS;
    told("clock", right, right ? say("test_yes") : say("test_clock_off", Math.round(Math.abs(off) / 60000)), say("test_clock_do"));
  },
  camera: async () => {
    const found = await navigator.mediaDevices?.enumerateDevices?.().then(list => list.some(one => one.kind === "videoinput")).catch(() => false) ?? false;
    told("camera", null, found ? say("test_try_it") : say("test_none"), found ? say("test_camera_try") : say("test_camera_do"));
  },
  sound: () => told("sound", null, say("test_try_it"), say("test_sound_try"))
};

async function camera() {
  try {
    const stream = await navigator.mediaDevices.getUserMedia({ video: true });
    stream.getTracks().forEach(track => track.stop());
    told("camera", true, say("test_yes"));
  } catch (refused) {
    told("camera", false, say("test_no"), say("test_camera_do"));
  }
}

/** Makes the page of the test work. */
export async function selfTest() {
  if (document.body.dataset.selfTest === undefined) return;
  const run = () => Promise.all(Object.values(tests).map(test => test()));
  document.querySelector("[data-test-again]").addEventListener("click", run);
  document.querySelector("[data-test-camera]").addEventListener("click", camera);
  document.querySelector("[data-test-sound]").addEventListener("click", async () => {
    const { playAll } = await import("./wall.js");
    await playAll();
    document.querySelector("[data-test-heard]").hidden = false;
  });
  document.querySelector("[data-test-heard]").addEventListener("click", () => told("sound", true, say("test_yes")));
  await run();
}
