// What was done to the plan, to be undone and done again without end.

const past = [];
const future = [];

// Edits of one field that follow each other this closely are one step, ms: a held button, a typed figure.
const TOGETHER = 700;

let last = { what: "", at: -Infinity };

/** Notes the plan as it was before an edit. */
export function note(before, what) {
  const at = performance.now();
  const same = what !== "structure" && what === last.what && at - last.at < TOGETHER;
  if (!same) past.push(before);
  future.length = 0;
  last = { what, at };
}

/** Another line is opened: what was done to the one before is not undone here. */
export function forget() {
  past.length = future.length = 0;
  last = { what: "", at: -Infinity };
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
