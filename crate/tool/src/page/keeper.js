
// Keeps the page for use without a network: every file of one version in a cache of its own. A tab that was opened by an
// older version goes on with that version's files, whatever has come since.
const MINE = `lightgap ${registration.scope} `;
const NOTES = `${MINE}tabs`;

/** Which version each tab of an older one belongs to, and the version that was last in use. */
async function notes() {
  const kept = await (await caches.open(NOTES)).match("tabs");
  return kept ? kept.json() : { current: null, tabs: {} };
}
const note = async (what) => (await caches.open(NOTES)).put("tabs", new Response(JSON.stringify(what)));

/** A file as the list has it, or a fault: a site that is being changed just now is not kept half and half. */
async function take(cache, name) {
  const answer = await fetch(name === "index.html" ? "./" : name, { cache: "no-cache" });
  const bytes = await answer.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  const mark = [...digest.slice(0, 8)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  if (!answer.ok || mark !== FILES[name]) throw new Error(`${name} is not the file of this version`);
  await cache.put(name, new Response(bytes, { headers: answer.headers }));
}

async function install() {
  const cache = await caches.open(MINE + VERSION);
  await Promise.all(Object.keys(FILES).map((name) => take(cache, name)));
}

/** Takes over: what no open tab needs is thrown away. */
async function activate() {
  const open = new Set((await clients.matchAll({ includeUncontrolled: true })).map(({ id }) => id));
  const { tabs } = await notes();
  const left = Object.fromEntries(Object.entries(tabs).filter(([id]) => open.has(id)));
  await note({ current: VERSION, tabs: left });
  const needed = [VERSION, ...Object.values(left)].map((version) => MINE + version);
  for (const name of await caches.keys()) {
    if (name.startsWith(MINE) && name !== NOTES && !needed.includes(name)) await caches.delete(name);
  }
  await clients.claim();
}

/** A tab asks for this version: every tab that is open now keeps its own. */
async function replace() {
  const { current, tabs } = await notes();
  for (const { id, url } of await clients.matchAll({ includeUncontrolled: true })) {
    if (url.startsWith(registration.scope) && current) tabs[id] ??= current;
  }
  await note({ current, tabs });
  await skipWaiting();
}

async function answer({ request, clientId }) {
  const { tabs } = await notes();
  const version = (request.mode !== "navigate" && tabs[clientId]) || VERSION;
  const name = request.url.slice(registration.scope.length).split(/[?#]/)[0] || "index.html";
  const kept = await (await caches.open(MINE + version)).match(name);
  return kept ?? fetch(request);
}

addEventListener("install", (event) => event.waitUntil(install()));
addEventListener("activate", (event) => event.waitUntil(activate()));
addEventListener("message", (event) => event.data === "replace" && event.waitUntil(replace()));
addEventListener("fetch", (event) => {
  if (event.request.method === "GET" && event.request.url.startsWith(registration.scope)) event.respondWith(answer(event));
});
