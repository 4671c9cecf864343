// Keeps the whole page on the device, one version as a whole. The host program writes both lines below.

const VERSION = "VERSION";
const FILES = ["FILES"];

// Everything of a version but its pages lies in a folder of its own, after which its cache is named too.
const folder = (version) => new URL(`${version}/`, registration.scope).href;
const HERE = folder(VERSION);
const OURS = folder("carryline-").slice(0, -1);

const ok = (response) => {
  if (!response.ok) throw new Error(`${response.url}: ${response.status}`);
  return response;
};

/** A file of this version. The address of a page stands for every version, so it is looked into; where a cache on the way gives an old one, it is fetched past all of them. */
async function fetched(path) {
  if (path.startsWith(VERSION)) return ok(await fetch(path));
  const own = async (response) => (await response.clone().text()).includes(VERSION);
  let response = ok(await fetch(path, { cache: "no-cache" }));
  if (!(await own(response))) response = ok(await fetch(path, { cache: "reload" }));
  if (!(await own(response))) throw new Error(`${path}: another version`);
  // A page that was moved to another address would not be shown.
  return response.redirected ? new Response(response.body, response) : response;
}

// Of the words, the language that the page chooses.
const words = (path) => path.match(/\/words\/([^/]+)/)?.[1];
const spoken = (navigator.languages ?? []).map((tag) => tag.toLowerCase().split("-")[0]);
const chosen = spoken.find((language) => FILES.some((path) => words(path) === language)) ?? "en";
// The shed and the sheets are kept as soon as somebody who plans may need them.
const later = (path) => /\/(shed[._]|build\/)/.test(path);
const NEEDED = FILES.filter((path) => [undefined, chosen].includes(words(path)) && !later(path));

/** Takes the version in whole, or not at all: then the next visit tries again. */
async function install() {
  const cache = await caches.open(HERE);
  try {
    await Promise.all(NEEDED.map(async (path) => cache.put(path, await fetched(path))));
  } catch (error) {
    await caches.delete(HERE);
    throw error;
  }
  await self.skipWaiting();
}

/** Removes other versions, but for those that a page is made from: each page holds a lock on its own. */
async function tidy() {
  const locks = (await navigator.locks.query()).held.filter((lock) => lock.name.startsWith(OURS));
  // A page that is still on its way holds none yet; the next to greet asks again.
  if ((await clients.matchAll()).length > locks.length) return;
  const used = new Set([HERE, ...locks.map((lock) => lock.name)]);
  const old = (await caches.keys()).filter((name) => name.startsWith(OURS) && !used.has(name));
  await Promise.all(old.map((name) => caches.delete(name)));
}

/** From the device: pages of this version, parts of whatever version a page still asks for. */
async function answer(request) {
  const how = { ignoreSearch: true, ignoreVary: true };
  const address = request.url.split(/[?#]/)[0].replace(/\/index\.html$/, "/");
  const cache = await caches.open(HERE);
  const kept = (await cache.match(address, how)) ?? (await caches.match(address, how));
  if (kept) return kept;
  const fetched = await fetch(request);
  // Another language is kept as soon as it is read.
  if (fetched.ok && address.startsWith(HERE)) await cache.put(address, fetched.clone());
  return fetched;
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));
// A page that holds its lock greets with its version.
self.addEventListener("message", (event) => {
  if (event.data !== HERE) event.source.postMessage("newer");
  event.waitUntil(tidy());
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.url.startsWith(registration.scope)) event.respondWith(answer(request));
});
