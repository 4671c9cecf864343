// The part of the simulator that is fetched once the page rides: for panels that are still closed, for
// pictures and files, and for the worker.

import { initRest } from "./carryline.js";
import { state, tell } from "./state.js";

let arrived;

/** Comes true once it is there. */
export const rest = new Promise((done) => (arrived = done));

export async function startRest() {
  await initRest();
  state.whole = true;
  arrived();
  tell("whole");
  document.documentElement.dataset.whole = "true";
}
