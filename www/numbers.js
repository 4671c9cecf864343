// Figures and lists as the reader's language writes them.

import { language } from "./language.js";

const POINT = new Intl.NumberFormat(language).formatToParts(0.5).find(({ type }) => type === "decimal").value;

/** A text with one number in it, written with a point, as the reader writes it. */
export const spelt = (text) => text.replace(".", POINT);

// Whether numbers are written with another sign than a point.
export const POINTLESS = POINT !== ".";

const between = new RegExp(`(\\d)\\${POINT}(?=\\d)`, "g");

/** A text with numbers as the reader writes them, with points, as the simulator reads them. */
export const pointed = (text) => text.replace(between, "$1.");

/** A number with so many places behind the point. */
export const fixed = (value, places) => spelt(value.toFixed(places));

const joiner = new Intl.ListFormat(language);

/** Several things, one after the other. */
export const list = (names) => joiner.format(names);
