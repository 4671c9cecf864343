// The reader's own lines, kept on the device: one entry each, so that two tabs never write the same one
// unless both edit the same line.

import { draw_seed } from "./carryline.js";
import { put, read } from "./device.js";

const PREFIX = "carryline.line.";

/** Id of the line that is edited here; null while a line is only looked at. */
export const here = { id: null, taken: false };

/** The line kept under a key; null where somebody else wrote something under our name. */
function line(key) {
  const entry = read("localStorage", key);
  return entry?.plan?.line ? { ...entry, id: key.slice(PREFIX.length) } : null;
}

const keys = () => Object.keys(localStorage).filter((key) => key.startsWith(PREFIX));

/** Whether any line is kept: quicker told than which. */
export const some = () => keys().some(line);

/** All kept lines, the last edited first. */
export function kept() {
  return keys()
    .map(line)
    .filter(Boolean)
    .sort((a, b) => b.saved - a.saved || a.id.localeCompare(b.id));
}

/** An id that no other line has: two are hardly made in one millisecond, let alone with one number drawn. */
export const fresh = () => `${Date.now()}-${draw_seed()}`;

/** Keeps a plan under an id; false where the device has no room or no store. */
export const keep = (id, plan, link) => put("localStorage", PREFIX + id, { plan, link, saved: Date.now() });

export const drop = (id) => localStorage.removeItem(PREFIX + id);

/** Calls `heard` when another tab writes the line that is edited here. */
export function onTaken(heard) {
  window.addEventListener("storage", ({ key, newValue }) => {
    if (key !== PREFIX + here.id || newValue === null) return;
    here.taken = true;
    heard();
  });
}
