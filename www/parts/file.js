// Files that the reader keeps.

import { POINTLESS, spelt } from "../numbers.js";
import { state } from "../state.js";
import { lines } from "../words.js";
import { make } from "./make.js";

// How long the browser may take to fetch what it is to save, ms.
const FETCHED = 20000;

/** Saves something under the line's name; gives the file's name. */
export function save(content, type, ending) {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const name = `${state.good.name || lines.unnamed}.${ending}`;
  make("a", { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), FETCHED);
  return name;
}

/** Saves the plan as it stands, faults and all. */
export const savePlan = () => save(JSON.stringify(state.plan, null, 2), "application/json", "json");

// With this in front, spreadsheets know the letters for what they are (Unicode 16.0, 2.6: UTF-8 signature).
const SIGNATURE = "\ufeff";

// What stands between two cells: with decimal commas a semicolon, as spreadsheets of such languages want it.
const BETWEEN = POINTLESS ? ";" : ",";

/** A cell of text: what a spreadsheet would work out stays text, as a name may come from anybody. */
function cell(value) {
  const text = typeof value === "string" ? value.replace(/^[=+\-@\t]/, "'$&") : spelt(String(value ?? ""));
  return /["\r\n]/.test(text) || text.includes(BETWEEN) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Saves rows of numbers and texts as CSV (RFC 4180). */
export function saveRows(rows, ending) {
  const text = rows.map((row) => `${row.map(cell).join(BETWEEN)}\r\n`).join("");
  return save(SIGNATURE + text, "text/csv", ending);
}
