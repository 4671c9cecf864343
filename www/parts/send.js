// The panel that a line is sent from: to somebody, as a link, as a code, or as a file.

import { qr } from "../carryline.js";
import { state } from "../state.js";
import { shown } from "../units.js";
import { names } from "../names.js";
import { share as words } from "../words.js";
import { address } from "./address.js";
import { savePlan, save, saveRows } from "./file.js";
import { make } from "./make.js";
import { say as warn } from "./message.js";
import { png, svg } from "./picture.js";
import { studied } from "./study.js";
import { rows } from "./table.js";

const SVG = "http://www.w3.org/2000/svg";

const panel = document.getElementById("send");
const opener = document.getElementById("share");

let status = null;

const say = (...content) => status.replaceChildren(...content);

function button(text, id, act) {
  const made = make("button", { type: "button", id }, text);
  made.addEventListener("click", async () => {
    try {
      await act();
    } catch (error) {
      console.warn(error);
      say(words.failed);
    }
  });
  return made;
}

/** What goes with the link: the line's name, the speeds at its lips, and the caution. */
function message() {
  const called = names(state.good);
  const jumps = state.story.jumps.filter((jump) => jump.speed != null);
  const speeds = jumps.map((jump) => words.lip(called[jump.feature] ?? "", shown(jump.speed, "speed")));
  return words.text(state.good.name, speeds.join(", "), document.querySelector("#result > .caution").textContent);
}

async function hand(url) {
  try {
    await navigator.share({ title: state.good.name, text: message(), url });
  } catch (error) {
    // The reader thought better of it.
    if (error.name !== "AbortError") throw error;
  }
}

async function copy(link) {
  try {
    await navigator.clipboard.writeText(link);
    say(words.copied);
  } catch {
    // Without the right to the clipboard the reader copies by hand.
    const text = make("input", { value: link, readOnly: true, id: "link" });
    text.setAttribute("aria-label", words.byHand);
    say(words.byHand, text);
    text.select();
  }
}

function code(link) {
  let found;
  try {
    found = qr(link);
  } catch {
    return make("p", {}, words.long);
  }
  const drawing = document.createElementNS(SVG, "svg");
  drawing.setAttribute("viewBox", `0 0 ${found.side} ${found.side}`);
  drawing.setAttribute("role", "img");
  drawing.setAttribute("aria-label", words.codeName);
  const path = document.createElementNS(SVG, "path");
  path.setAttribute("d", found.path);
  drawing.append(path);
  return make("figure", {}, drawing, make("figcaption", {}, words.code));
}

const saved = (name) => say(words.saved(name));

const files = () => [
  button(words.png, "save-png", async () => {
    await studied();
    saved(save(await png(), "image/png", "png"));
  }),
  button(words.svg, "save-svg", async () => {
    await studied();
    saved(save(svg(), "image/svg+xml", "svg"));
  }),
  button(words.csv, "save-csv", async () => {
    await studied();
    saved(saveRows(rows(), "csv"));
  }),
  button(words.json, "save-json", () => saved(savePlan())),
];

/** Opens the panel. */
function open() {
  if (state.faults.length) return warn(words.faulty);
  const link = address();
  opener.dataset.link = link;
  status = make("p", { className: "status", role: "status" });
  const close = make("button", { type: "button", id: "send-close" }, words.close);
  close.addEventListener("click", () => panel.close());
  const ways = [button(words.copy, "send-copy", () => copy(link))];
  if (navigator.share) ways.unshift(button(words.send, "send-share", () => hand(link)));
  ways[0].classList.add("main");
  ways[0].autofocus = true;
  panel.replaceChildren(
    make("div", { className: "head" }, make("h2", { id: "send-title" }, words.title), close),
    make("p", {}, words.what),
    make("p", { className: "actions" }, ...ways),
    status,
    code(link),
    make("h3", {}, words.save),
    make("p", { className: "actions" }, ...files()),
  );
  panel.showModal();
}

export function startSend() {
  opener.addEventListener("click", open);
  // A tap beside the panel is on the panel's own element, not on what it holds.
  panel.addEventListener("click", (event) => {
    if (event.target === panel) panel.close();
  });
}
