// What is wrong with a text, a file or a link: the simulator says it as plain data, the words are the page's.

import { links, reasons, rows, typed, unreadable } from "./words.js";

/** Why a field is at fault, as the part of a sentence. */
export const reason = (why) => reasons[why] ?? unreadable[why.unreadable.what](why.unreadable.told);

/** Why a text is no quantity, and what would be. */
export function notRead({ given, quantity, system, wrong: { kind, unit } }) {
  const examples = typed[system][quantity] ?? typed.metric[quantity];
  return typed.accepted(typed.wrong[kind](given, unit), examples);
}

/** Why a row is no two lengths. */
export function noRow({ row, wrong: { kind, with: what } }) {
  if (kind === "length") return rows.at(row, notRead(what));
  return rows.at(row, kind === "unknown_unit" ? rows.unknown_unit(what) : rows[kind]);
}

/** Why a text is no link. */
export const noLink = ({ kind }) => links[kind];
