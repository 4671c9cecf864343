// How far each figure may be off: asked of the worker after every change.

import { state, onChange, tell } from "../state.js";

// How long an edit rests before its range is worked out, ms: a held button changes a plan often.
const REST = 150;

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
    state.spreads = data.spreads;
    delete page.dataset.working;
    tell("spread");
  };
  worker.onerror = () => {
    worker.terminate();
    worker = null;
  };
  return worker;
}

function ask() {
  asked += 1;
  beside().postMessage({ asked, plan: JSON.stringify(state.good) });
}

export function startSpread() {
  onChange((what) => {
    if (!state.good || (what !== "plan" && what !== "structure")) return;
    // What is on its way belongs to another line.
    asked += 1;
    state.spreads = null;
    page.dataset.working = "true";
    clearTimeout(waiting);
    waiting = setTimeout(ask, REST);
  });
}
