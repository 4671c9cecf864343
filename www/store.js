// The reader's own lines, kept on the device: one entry each, so that two tabs never write the same one
// unless both edit the same line.

import { draw_seed } from "./carryline.js";

const PREFIX = "carryline.line.";

/** Id of the line that is edited here; null while a line is only looked at. */
export const here = { id: null, taken: false };

function read(key) {
  try {
    const entry = JSON.parse(localStorage.getItem(key));
    return entry?.plan?.line ? { ...entry, id: key.slice(PREFIX.length) } : null;
  } catch {
    // What somebody else wrote under our name is no line of ours.
    return null;
  }
}

/** All kept lines, the last edited first. */
export function kept() {
  const keys = Object.keys(localStorage).filter((key) => key.startsWith(PREFIX));
  return keys
    .map(read)
    .filter(Boolean)
    .sort((a, b) => b.saved - a.saved || a.id.localeCompare(b.id));
}

/** An id that no other line has: two are hardly made in one millisecond, let alone with one number drawn. */
export const fresh = () => `${Date.now()}-${draw_seed()}`;

/** Keeps a plan under an id; false where the device has no room or no store. */
export function keep(id, plan, link) {
  try {
    localStorage.setItem(PREFIX + id, JSON.stringify({ plan, link, saved: Date.now() }));
    return true;
  } catch {
    return false;
  }
}

export const drop = (id) => localStorage.removeItem(PREFIX + id);

/** Calls `heard` when another tab writes the line that is edited here. */
export function onTaken(heard) {
  window.addEventListener("storage", ({ key, newValue }) => {
    if (key !== PREFIX + here.id || newValue === null) return;
    here.taken = true;
    heard();
  });
}
