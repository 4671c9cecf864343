// Lists of what is cut, and from which boards.

import { list as joined } from "../numbers.js";
import { table, text } from "./leaf.js";
import { sawn, section, size as broad, thick } from "./quantities.js";
import { pieces as words } from "./words.js";

// Rods are no wood: their section is their diameter.
const RODS = ["cross_tie", "anchor_tie"];

const size = ({ kind, section: both }) => (RODS.includes(kind) ? words.rod(thick(both[0])) : section(both));

/** A list of pieces of timber, rods and sheets. */
export function pieceRows(pieces, sheets = []) {
  const timber = pieces.map((piece) => [words.kinds[piece.kind], size(piece), sawn(piece.length), String(piece.count)]);
  const panels = sheets.map((sheet) => [words.sheets[sheet.kind], words.plywood(thick(sheet.thickness)), broad(sheet.size), String(sheet.count)]);
  return table([words.what, words.section, `#${words.length}`, `#${words.count}`], [...timber, ...panels]);
}

/** Alike cuts together, the longest first. */
function counted(cuts) {
  const found = new Map();
  for (const cut of cuts.map(sawn)) found.set(cut, (found.get(cut) ?? 0) + 1);
  return [...found].map(([cut, count]) => (count > 1 ? `${count} × ${cut}` : cut)).join(", ");
}

/** Alike boards together: length, cuts, what is left, and how many. */
function alike(boards) {
  const found = new Map();
  for (const { length, cuts, offcut } of boards) {
    const row = [sawn(length), counted(cuts), sawn(offcut)];
    const key = row.join("|");
    found.set(key, { row, count: (found.get(key)?.count ?? 0) + 1 });
  }
  return [...found.values()];
}

/** Which lengths are cut from which boards. */
export function cuttingPlan(cuttings) {
  const rows = cuttings.flatMap((cutting) => alike(cutting.boards).map(({ row: [length, cuts, offcut], count }) => [`${count} × ${section(cutting.section)}`, length, cuts, offcut]));
  const long = cuttings.flatMap(({ too_long: all }) => all.map(sawn));
  const sure = cuttings.every(({ fewest }) => fewest);
  return [
    table([words.boards, `#${words.length}`, words.cuts, `#${words.offcut}`], rows),
    rows.length ? text(sure ? words.fewest : words.few) : null,
    long.length ? text(words.tooLong(joined(long))) : null,
  ];
}

/** What a piece is called. */
export const named = ({ kind }) => words.kinds[kind] ?? words.sheets[kind];
