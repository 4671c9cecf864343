// Words of the trade, each explained by a tap where it stands.

import { terms as words } from "../words.js";
import { make } from "./make.js";
import { say } from "./message.js";

// Whole words alone, however they are written at the begin of a sentence.
const all = Object.values(words);
const known = new RegExp(`(?<!\\p{L})(${all.map(([word]) => word).join("|")})(?!\\p{L})`, "iu");

const meaning = (word) => all.find(([one]) => one.toLowerCase() === word.toLowerCase())[1];

function term(word) {
  const button = make("button", { type: "button", className: "term" }, word);
  button.addEventListener("click", () => say(meaning(word)));
  return button;
}

/** A text as what an element is filled with: the first word of the trade in it can be tapped. */
export function explained(text) {
  const [before, word, ...after] = text.split(known);
  return word ? [before, term(word), after.join("")] : [text];
}
