// What is found out by riding a line again and again: asked of the worker after every change, the part
// that is looked at first before the others.

import { compiled } from "../carryline.js";
import { state, onChange, tell } from "../state.js";

// How long an edit rests before it is studied, ms: a held button changes a plan often.
const REST = 150;

// How long somebody who wants the figures in a file waits for them, ms.
const PATIENCE = 5000;

const PARTS = ["spreads", "fit", "windows", "suggestions", "tolls", "test_day"];

const page = document.documentElement;

let worker = null;
let asked = 0;
let waiting = 0;

/** The worker; one that broke down is replaced when it is needed next. */
function beside() {
  if (worker) return worker;
  worker = new Worker(new URL("../worker.js", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }) => {
    if (data.asked !== asked) return;
    state.study[data.part] = data.answer;
    ask(PARTS.indexOf(data.part) + 1);
    tell("study");
  };
  worker.onerror = () => {
    worker.terminate();
    worker = null;
  };
  return worker;
}

/** Asks for a part; the next one is asked for with its answer, so that nothing stale piles up. */
function ask(number) {
  if (number < PARTS.length) beside().postMessage({ simulator: compiled(), asked, part: PARTS[number], plan: JSON.stringify(state.good) });
  else delete page.dataset.working;
}

/** Comes true once a line is studied, or after a while in which nothing came of it. */
export async function studied() {
  const last = performance.now() + PATIENCE;
  while (page.dataset.working && performance.now() < last) await new Promise((done) => setTimeout(done, REST));
}

export function startStudy() {
  onChange((what) => {
    if (!state.good || !["plan", "structure", "whole", "sketched"].includes(what)) return;
    // What is on its way belongs to another line.
    asked += 1;
    page.dataset.working = "true";
    clearTimeout(waiting);
    // What is dragged is studied once it is let go: until then the processor has enough to do.
    if (what !== "sketched") waiting = setTimeout(ask, REST, 0);
  });
}
