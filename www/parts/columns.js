// Two columns of lengths, typed or pasted from a spreadsheet: a station and a height in each row.

import { readings as read } from "../carryline.js";
import { state } from "../state.js";
import { pointed, spelt } from "../numbers.js";
import { plain } from "../units.js";

/** Points, m, as a text in the reader's units. */
export const columns = (points) => points.map((point) => `${point.map((v) => spelt(plain(v, "length")[0])).join("\t")}\n`).join("");

// Where something else than a comma stands between two numbers, the comma stands inside them.
const apart = (line) => (/\S[\s;]+\S/.test(line) ? pointed(line) : line);

/** The points of a text, m; throws what is wrong with its rows, one by one. */
export function readPairs(text) {
  const flat = read(text.split("\n").map(apart).join("\n"), state.system);
  return Array.from({ length: flat.length / 2 }, (_, i) => [flat[2 * i], flat[2 * i + 1]]);
}
