// Figures and lists as the reader's language writes them.

import { language } from "./language.js";
import { point } from "./words.js";

/** A text with one number in it, written with a point, as the reader writes it. */
export const spelt = (text) => text.replace(".", point);

// Whether numbers are written with another sign than a point.
export const POINTLESS = point !== ".";

const between = new RegExp(`(\\d)\\${point}(?=\\d)`, "g");

/** A text with numbers as the reader writes them, with points, as the simulator reads them. */
export const pointed = (text) => text.replace(between, "$1.");

/** A number with so many places behind the point. */
export const fixed = (value, places) => spelt(value.toFixed(places));

let joiner = null;

/** Several things, one after the other. */
export function list(names) {
  // The first one takes a while.
  joiner ??= new Intl.ListFormat(language);
  return joiner.format(names);
}
