// Keeps the page on the device, and says when a newer version has come.

import { newer, loadAgain } from "../words.js";
import { make } from "./make.js";
import { say } from "./message.js";

const { serviceWorker, locks } = navigator;

// The folder of this version. While the lock is held, what is kept of it stays.
const here = new URL("..", import.meta.url).href;

function tellNewer() {
  const again = make("button", { type: "button", onclick: () => location.reload() }, loadAgain);
  say(newer, again);
}

export async function startNewer() {
  // Neither is there for a page that came over a line anybody could write on.
  if (!serviceWorker || !locks) return;
  locks.request(here, { mode: "shared" }, () => {
    serviceWorker.controller?.postMessage("tidy");
    return new Promise(() => {});
  });
  // The first to take the page over brings the version that the page has.
  let known = Boolean(serviceWorker.controller);
  serviceWorker.addEventListener("controllerchange", () => {
    if (known) tellNewer();
    known = true;
  });
  const registered = await serviceWorker.register("sw.js");
  // A page that is only put aside, as on a phone, is never loaded again by itself.
  document.addEventListener("visibilitychange", () => {
    // Without a connection there is nothing newer to be had.
    if (!document.hidden) registered.update().catch(() => {});
  });
}
