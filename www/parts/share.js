// Sending the line: a link that holds the whole plan behind #, where no server sees it.

import { link_to } from "../carryline.js";
import { state, onChange } from "../state.js";
import { share as words } from "../words.js";
import { say } from "./message.js";
import { openPanel } from "./send.js";

// How long an edit rests before the address follows it, ms: browsers limit how often it may.
const REST = 600;

let own = null;
let timer = 0;

const address = () => `${location.href.split("#")[0]}#${link_to(state.plan)}`;

/** Whether the address is the one that this page wrote itself. */
export const isOwnAddress = () => location.href === own;

/** Keeps the address in step, so that a reload shows the line as it was left. */
function follow() {
  if (state.faults.length) return;
  own = address();
  history.replaceState(null, "", own);
}

function send() {
  if (state.faults.length) return say(words.faulty);
  const link = address();
  document.getElementById("share").dataset.link = link;
  openPanel(link);
}

export function startShare() {
  const button = document.getElementById("share");
  button.addEventListener("click", send);
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
