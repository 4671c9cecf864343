// What is built, in the reader's units: as finely as it is measured where it is built.

import { fixed } from "../numbers.js";
import { state } from "../state.js";
import { plain, shown as written } from "../units.js";

const NO_BREAK = "\u00a0";

// A figure and its unit stay together where a line ends.
const shown = (value, quantity) => written(value, quantity).replaceAll(" ", NO_BREAK);

/** Of what is dug or set out with a tape, m. */
export const length = (metres) => shown(metres, "length");

/** The same with its sign: over the ground, or under it. */
export function signed(metres) {
  const text = length(Math.abs(metres));
  if (text === length(0)) return text;
  return `${metres < 0 ? "−" : "+"}${text}`;
}

// No saw is set finer, m. In inches the simulator rounds by itself.
const MARK = 0.001;

/** Of what is sawn, m. */
export function sawn(metres) {
  const marked = Number((Math.round(metres / MARK) * MARK).toFixed(3));
  return shown(state.system === "feet" ? metres : marked, "sawn");
}

/** Of how thick something is, m: sheets are sold in halves of a millimetre. */
export const thick = (metres) => shown(metres, "sawn");

/** Two measures of one piece. In inches each figure carries its own sign. */
function times(a, b) {
  const first = state.system === "feet" ? a : a.split(NO_BREAK)[0];
  return `${first} × ${b}`.replaceAll(" ", NO_BREAK);
}

/** Thickness and width, m. */
export const section = ([a, b]) => times(thick(a), sawn(b));

/** Length and width, m. */
export const size = ([a, b]) => times(sawn(a), sawn(b));

export const volume = (cubicMetres) => shown(cubicMetres, "volume");
export const mass = (kilograms) => shown(kilograms, "mass");
export const force = (newtons) => shown(newtons, "force");
export const speed = (metresPerSecond) => shown(metresPerSecond, "speed");

/** From radians. */
export const angle = (radians) => shown((radians * 180) / Math.PI, "angle");

export const percent = (share) => `${fixed(100 * share, 0)}${NO_BREAK}%`;

/** A figure with so many places, for what is a pure number. */
export const figure = (value, places = 1) => fixed(value, places);

/** Money has no unit here: the builder knows which. */
export const money = (value) => fixed(value, 2);

// Finer than anybody builds or measures.
const PLACES = 4;

/** A text for another program. */
export const loose = (text) => text.replaceAll(NO_BREAK, " ");

/** For another program: the number alone; nothing where there is none. */
export const bare = (value, quantity) => (value == null ? null : Number(Number(plain(value, quantity)[0]).toFixed(PLACES)));

/** A heading for it, with its unit. */
export const headed = (word, quantity) => `${word} (${plain(0, quantity)[1]})`;
