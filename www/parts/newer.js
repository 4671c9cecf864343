// Keeps the page on the device, and says when a newer version has come.

import { language } from "../language.js";
import { onChange } from "../state.js";
import { newer, loadAgain } from "../words.js";
import { make } from "./make.js";
import { say } from "./message.js";

const { serviceWorker, locks } = navigator;

// The folder of this version. While the lock is held, what is kept of it stays.
const here = new URL("..", import.meta.url).href;

// What the shed and the sheets are made of: whoever changes a line may build it and ride it where there is no
// connection, and want to know what that teaches.
const sheets = ["app.js", "start.js", "style.css", `words/${language}/all.js`].map((part) => `../build/${part}`);
let shed = ["../shed.js", "../shed_bg.wasm", ...sheets];

function keepShed() {
  for (const part of shed) fetch(new URL(part, import.meta.url)).catch(console.warn);
  shed = [];
}

function tellNewer() {
  const again = make("button", { type: "button", onclick: () => location.reload() }, loadAgain);
  say(newer, again);
}

export async function startNewer() {
  // Neither is there for a page that came over a line anybody could write on.
  if (!serviceWorker || !locks) return;
  // Whoever keeps the page answers if it keeps another version by now: that may happen at any moment.
  const greet = () => serviceWorker.controller?.postMessage(here);
  serviceWorker.addEventListener("message", tellNewer);
  serviceWorker.addEventListener("controllerchange", greet);
  locks.request(here, { mode: "shared" }, () => {
    greet();
    return new Promise(() => {});
  });
  const registered = await serviceWorker.register("sw.js");
  onChange((what) => what === "plan" && keepShed());
  // Whenever it is loaded the browser looks for a newer version; a page that is only put aside, as on a
  // phone, is never loaded again by itself.
  document.addEventListener("visibilitychange", () => {
    // Without a connection there is nothing newer to be had.
    if (!document.hidden) registered.update().catch(() => {});
  });
}
