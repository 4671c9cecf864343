// The address as a link to the line: it holds the whole plan behind #, where no server sees it.

import { link_to } from "../carryline.js";
import { state, onChange } from "../state.js";

// How long an edit rests before the address follows it, ms: browsers limit how often it may.
const REST = 600;

let timer = 0;

/** The link to the line. */
export const address = () => `${location.href.split("#")[0]}#${link_to(state.plan)}`;

/** Whether the address is that of the line as it is shown. */
export const isShown = () => location.href === address();

/** Leaves the address as it is until the next edit. */
export const keepAddress = () => clearTimeout(timer);

/** Keeps the address in step, so that a reload shows the line as it was left. */
function follow() {
  if (state.faults.length) return;
  history.replaceState(null, "", address());
}

export function startAddress() {
  let opening = false;
  onChange((what) => {
    if (what === "opened") opening = true;
    if (!["plan", "structure", "name"].includes(what)) return;
    clearTimeout(timer);
    // Opening a line is no edit: an address that was followed here stays as it came.
    const stays = opening && (state.looking || location.hash.length < 2);
    opening = false;
    if (stays) return;
    timer = setTimeout(follow, REST);
  });
}
