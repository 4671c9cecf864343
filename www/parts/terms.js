// Words of the trade, each explained by a tap where it is first met.

import { terms as words } from "../words.js";
import { make } from "./make.js";
import { say } from "./message.js";

// Whole words alone, however they are written at the begin of a sentence.
const all = Object.values(words);
const known = new RegExp(`(?<!\\p{L})(${all.map(([word]) => word).join("|")})(?!\\p{L})`, "iu");

const entry = (word) => all.find(([one]) => one.toLowerCase() === word.toLowerCase());

function term(word) {
  const button = make("button", { type: "button", className: "term" }, word);
  button.addEventListener("click", () => say(entry(word)[1]));
  return button;
}

/** A text as what an element is filled with: the first word of the trade in it that was not `met` before can be
 * tapped, and so can each after it. */
export function explained(text, met = new Set()) {
  const [before, word, ...after] = text.split(known);
  if (!word) return [text];
  const rest = after.join("");
  if (met.has(entry(word))) {
    const [first, ...others] = explained(rest, met);
    return typeof first === "string" ? [`${before}${word}${first}`, ...others] : [`${before}${word}`, first, ...others];
  }
  met.add(entry(word));
  return [before, term(word), ...explained(rest, met)].filter((part) => part !== "");
}

// What is a way already, or names one.
const WAYS = "button, label, legend, summary, select, th, textarea";

/** Has each word of the trade explained where it is first met in what was just written. */
export function explain(box) {
  const met = new Set([...box.querySelectorAll(".term")].map((button) => entry(button.textContent)));
  const walker = document.createTreeWalker(box, NodeFilter.SHOW_TEXT);
  const texts = [];
  while (walker.nextNode()) if (!walker.currentNode.parentElement.closest(WAYS)) texts.push(walker.currentNode);
  for (const text of texts) {
    const parts = explained(text.data, met);
    if (parts.length > 1 || parts[0] !== text.data) text.replaceWith(...parts);
  }
}

/** Under the heading of each group of fields, the words of the trade that its fields are named with and no group before. */
export function explainFields(groups, more = "") {
  const met = new Set();
  for (const group of groups) {
    const names = [more, ...[...group.querySelectorAll("legend, label")].map((name) => name.textContent)];
    const found = explained(names.join(". "), met).filter((part) => typeof part !== "string");
    more = "";
    if (!found.length) continue;
    const row = make("p", { className: "words" }, ...found);
    const legend = group.querySelector("legend");
    if (legend) legend.after(row);
    else group.prepend(row);
  }
}
