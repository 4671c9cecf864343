// Sending the line: a link that holds the whole plan behind #, where no server sees it.

import { link_to } from "../carryline.js";
import { state, onChange } from "../state.js";
import { share as words } from "../words.js";
import { say } from "./message.js";

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

async function send() {
  if (state.faults.length) return say(words.faulty);
  const link = address();
  try {
    await navigator.clipboard.writeText(link);
    say(words.copied);
  } catch {
    // Without the right to the clipboard the reader copies by hand.
    say(words.byHand);
    const text = Object.assign(document.createElement("input"), { value: link, readOnly: true, id: "link" });
    text.setAttribute("aria-label", words.byHand);
    document.getElementById("message").append(text);
    text.select();
  }
}

export function startShare() {
  const button = document.getElementById("share");
  button.addEventListener("click", () => {
    send();
    button.dataset.link = address();
  });
  let opened = false;
  onChange((what) => {
    if (what !== "plan" && what !== "structure") return;
    // Opening a line is no edit: the address stays as it came.
    if (!opened) {
      opened = true;
      return;
    }
    clearTimeout(timer);
    timer = setTimeout(follow, REST);
  });
}
