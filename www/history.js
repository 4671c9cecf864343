// What was done to the plan, to be undone and done again without end.

import { put, read } from "./device.js";

const past = [];
const future = [];

// Edits of one field that follow each other this closely are one step, ms: a held button, a typed figure.
const TOGETHER = 700;

let last = { what: "", at: -Infinity, held: undefined };

/** Notes the plan as it was before an edit. `held` names what is held meanwhile: all that is done until it is let go
 * is one step, however long it takes. */
export function note(before, what, held) {
  const at = performance.now();
  const same = what !== "structure" && what === last.what && held === last.held && (held || at - last.at < TOGETHER);
  if (!same) past.push(before);
  future.length = 0;
  last = { what, at, held };
}

// Under what name the steps of a line are kept while the tab is open, and how many of them.
const KEY = "carryline.steps.";
const MOST = 60;

/** Keeps the steps of a line with its plan as it is now, so that they outlast a reload. Without room for them they last
 * as long as the page. */
export const remember = (id, now) => put("sessionStorage", KEY + id, { now, past: past.slice(-MOST), future: future.slice(-MOST) });

/** Takes the steps of a line that was just opened, where its plan is still as it was. */
export function recall(id, now) {
  const steps = read("sessionStorage", KEY + id);
  if (JSON.stringify(steps?.now) !== JSON.stringify(now)) return;
  past.push(...(steps.past ?? []));
  future.push(...(steps.future ?? []));
}

/** Another line is opened: what was done to the one before is not undone here. */
export function forget() {
  past.length = future.length = 0;
  last = { what: "", at: -Infinity, held: undefined };
}

export const canUndo = () => past.length > 0;
export const canRedo = () => future.length > 0;

/** The plan before the last step, which `now` is kept for. */
export function back(now) {
  if (!past.length) return null;
  future.push(now);
  last.what = "";
  return past.pop();
}

/** The plan after the step that was undone last. */
export function forth(now) {
  if (!future.length) return null;
  past.push(now);
  last.what = "";
  return future.pop();
}
