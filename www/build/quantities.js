// What is built, in the reader's units: as finely as it is measured where it is built.

import { fixed } from "../numbers.js";
import { state } from "../state.js";
import { plain, shown } from "../units.js";

/** Of what is dug or set out with a tape, m. */
export const length = (metres) => shown(metres, "length");

/** The same with its sign: over the ground, or under it. */
export function signed(metres) {
  const text = length(Math.abs(metres));
  if (text === length(0)) return text;
  return `${metres < 0 ? "−" : "+"}${text}`;
}

/** Of what is sawn, m. */
export const sawn = (metres) => shown(metres, "sawn");

/** Thickness and width, or length and width, m. */
export function section([a, b]) {
  // In inches each figure carries its own sign.
  const first = state.system === "feet" ? sawn(a) : sawn(a).split(" ")[0];
  return `${first} × ${sawn(b)}`;
}

export const volume = (cubicMetres) => shown(cubicMetres, "volume");
export const mass = (kilograms) => shown(kilograms, "mass");
export const force = (newtons) => shown(newtons, "force");
export const speed = (metresPerSecond) => shown(metresPerSecond, "speed");

/** From radians. */
export const angle = (radians) => shown((radians * 180) / Math.PI, "angle");

export const percent = (share) => `${fixed(100 * share, 0)} %`;

/** A figure with so many places, for what is a pure number. */
export const figure = (value, places = 1) => fixed(value, places);

/** Money has no unit here: the builder knows which. */
export const money = (value) => fixed(value, 2);

// Finer than anybody builds or measures.
const PLACES = 4;

/** For another program: the number alone; nothing where there is none. */
export const bare = (value, quantity) => (value == null ? null : Number(Number(plain(value, quantity)[0]).toFixed(PLACES)));

/** A heading for it, with its unit. */
export const headed = (word, quantity) => `${word} (${plain(0, quantity)[1]})`;
