// What is found out by riding a line again and again: asked of the worker after every change, the part
// that is looked at first before the others.

import { state, onChange, tell } from "../state.js";
import { unlessHeld } from "../finger.js";
import * as beside from "./beside.js";

// How long an edit rests before it is studied, ms: a held button changes a plan often.
const REST = 150;

// How long somebody who wants the figures in a file waits for them, ms.
const PATIENCE = 5000;

const PARTS = ["spreads", "fit", "windows", "suggestions", "missing", "tolls", "test_day", "tolerances"];

const page = document.documentElement;

let waiting = 0;
let round = 0; // counts what was begun to be studied

/** All is told, where nothing else was begun meanwhile. */
function finish(which) {
  if (which === round) delete page.dataset.working;
}

/** Asks for a part; the next one is asked for with its answer, so that nothing stale piles up. */
function ask(number) {
  const part = PARTS[number];
  if (!part) {
    const which = round;
    unlessHeld(() => finish(which));
    return;
  }
  beside.ask("study", { part, plan: state.good }, (answer) => {
    // What could not be found out is left out.
    state.study[part] = answer ?? null;
    state.study.lost ||= answer === undefined;
    ask(number + 1);
    unlessHeld(() => tell("study"));
  });
}

/** Comes true once a line is studied, or after a while in which nothing came of it. */
export async function studied() {
  const last = performance.now() + PATIENCE;
  while (page.dataset.working && performance.now() < last) await new Promise((done) => setTimeout(done, REST));
}

export function startStudy() {
  onChange((what) => {
    if (!state.good || !["plan", "structure", "sketched"].includes(what)) return;
    // What is on its way belongs to another line.
    beside.drop("study");
    page.dataset.working = "true";
    round += 1;
    clearTimeout(waiting);
    // What is dragged is studied once it is let go: until then the processor has enough to do.
    if (what !== "sketched") waiting = setTimeout(ask, REST, 0);
  });
}
