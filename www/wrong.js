// What is wrong with a text, a file or a link: the simulator says it as plain data, the words are the page's.

import { names } from "./names.js";
import { fields, groups, links, reasons, rows, typed, unreadable } from "./words.js";

/** Why a field is at fault, as the part of a sentence. */
export const reason = (why) => reasons[why] ?? unreadable[why.unreadable.what];

/** What a part of a plan in a file is called on the page; nothing where it has no name there, or there is no plan. */
function part([first, inner], text) {
  try {
    const plan = JSON.parse(text);
    const at = Number(/\[(\d+)\]/.exec(inner ? `${first}.${inner}` : first)?.[1]);
    if (first === "line") return names(plan)[at];
    return first.startsWith("riders") ? plan.riders[at].label : groups[first];
  } catch {
    return "";
  }
}

/** Where in a plan file a field is, as a builder calls it. */
export function place(field, text) {
  const path = field.split(".");
  const [around, last] = path.slice(-2);
  return [part(path, text), path.length > 2 && groups[around], fields[`${around}_${last}`] ?? fields[last]].filter(Boolean).join(", ");
}

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
