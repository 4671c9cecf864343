// Keeps the whole page on the device, one version as a whole. The host program writes both lines below.

const VERSION = "VERSION";
const FILES = ["FILES"];

// Everything of a version but its pages lies in a folder of its own, after which its cache is named too.
const folder = (version) => new URL(`${version}/`, registration.scope).href;
const HERE = folder(VERSION);
const OURS = folder("carryline-").slice(0, -1);

/** A file of this version; the address of a page stands for every version, so it is looked into. */
async function fetched(path) {
  const part = path.startsWith(VERSION);
  const response = await fetch(path, { cache: part ? "default" : "no-cache" });
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  if (!part && !(await response.clone().text()).includes(VERSION)) throw new Error(`${path}: another version`);
  // A page that was moved to another address would not be shown.
  return response.redirected ? new Response(response.body, response) : response;
}

/** Takes the version in whole, or not at all: then the next visit tries again. */
async function install() {
  const cache = await caches.open(HERE);
  try {
    await Promise.all(FILES.map(async (path) => cache.put(path, await fetched(path))));
  } catch (error) {
    await caches.delete(HERE);
    throw error;
  }
  await self.skipWaiting();
}

/** Removes other versions, but for those that a page is still made from: each page holds a lock on its own, and asks for this once it does. */
async function tidy() {
  const { held } = await navigator.locks.query();
  const used = new Set([HERE, ...held.map((lock) => lock.name)]);
  const old = (await caches.keys()).filter((name) => name.startsWith(OURS) && !used.has(name));
  await Promise.all(old.map((name) => caches.delete(name)));
}

/** From the device: pages of this version, parts of whatever version a page still asks for. */
async function answer(request) {
  const how = { ignoreSearch: true, ignoreVary: true };
  const address = request.url.split(/[?#]/)[0].replace(/\/index\.html$/, "/");
  const cache = await caches.open(HERE);
  return (await cache.match(address, how)) ?? (await caches.match(address, how)) ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));
self.addEventListener("message", (event) => event.waitUntil(tidy()));
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.url.startsWith(registration.scope)) event.respondWith(answer(request));
});
