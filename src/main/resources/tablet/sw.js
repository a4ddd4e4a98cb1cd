/*
 * What a tablet's browser does with a request. BUILD and FILES are put before these lines by the service.
 *
 *   request                                       rule
 *   anything but GET, and /api /events /owner …   untouched: the page asks the network itself, and records never pass through here
 *   a page                                        the network, at most 3 s; without it the page that this tablet keeps, which shows the same address
 *   /waiting                                      the tablet's own page, always: it shows what is only on this tablet
 *   a file of the screens                         as kept, while the service has the same build; else the network, then as kept
 *
 * A new version is taken in while the old one goes on working. It takes over only when a page says that nobody is at an entry.
 */
const CACHE = "trivet-" + BUILD;
const SHELL = "/tablet/shell", OWN = "/waiting";
const UNTOUCHED = ["/api/", "/events", "/owner", "/reports/", "/q/", "/due.json", "/tablet/kit.json", "/session/owner", "/start", "/photos/", "/sheets", "/join"];
const PATIENCE_MS = 3000;
const AFTER_FAILURE_MS = 15000;
let served = BUILD, failedAt = -AFTER_FAILURE_MS;

self.addEventListener("install", event => event.waitUntil(caches.open(CACHE)
  .then(cache => cache.addAll(FILES.map(file => new Request(file, { cache: "reload" }))))));

self.addEventListener("activate", event => event.waitUntil(caches.keys()
  .then(names => Promise.all(names.filter(name => name.startsWith("trivet-") && name !== CACHE).map(name => caches.delete(name))))
  .then(() => self.clients.claim())));

self.addEventListener("message", event => {
  if (event.data === "take over") self.skipWaiting();
  if (event.data === "link up") failedAt = -AFTER_FAILURE_MS;
});

const kept = path => caches.open(CACHE).then(cache => cache.match(path));

async function network(request, patience) {
  const answer = await Promise.race([fetch(request), new Promise((kept, absent) => setTimeout(() => absent(new Error("no answer in time")), patience))]);
  failedAt = -AFTER_FAILURE_MS;
  if (answer.status >= 502 && answer.status <= 504) throw new Error("no service behind the address");
  return answer;
}

async function page(request, path) {
  if (path === OWN) return await kept(SHELL) ?? await network(request, PATIENCE_MS);
  if (Date.now() - failedAt < AFTER_FAILURE_MS) return await kept(SHELL);
  try {
    const answer = await network(request, PATIENCE_MS);
    served = answer.headers.get("Trivet-Build") ?? served;
    return answer;
  } catch (absent) {
    failedAt = Date.now();
    return await kept(SHELL);
  }
}

async function file(request, path) {
  const own = await kept(path);
  if (own && served === BUILD) return own;
  try {
    return await network(request, PATIENCE_MS);
  } catch (absent) {
    return own ?? Response.error();
  }
}

self.addEventListener("fetch", event => {
  const { request } = event, { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== location.origin || UNTOUCHED.some(path => pathname.startsWith(path))) return;
  if (request.mode === "navigate") event.respondWith(page(request, pathname));
  else if (FILES.includes(pathname)) event.respondWith(file(request, pathname));
});
