// The reader's own lines, kept on the device: one entry each, so that two tabs never write the same one
// unless both edit the same line.

import { draw_seed, open_file as openFile } from "./carryline.js";
import { all, lose, put, read } from "./device.js";

const PREFIX = "carryline.line.";

/** Id of the line that is edited here; null while a line is only looked at. */
export const here = { id: null, taken: false };

/** The line kept under a key; null where it cannot be read: a newer version may know more, and somebody else may have
 * written under our name. It stays where it is. */
function line(key) {
  try {
    const { plan, link, saved } = read("localStorage", key);
    // The simulator's own reader fills in what a plan leaves open, and says what is no plan.
    return { plan: openFile(JSON.stringify(plan)), link: [link].flat().map(String), saved: Number(saved) || 0, id: key.slice(PREFIX.length) };
  } catch {
    return null;
  }
}

const keys = () => all("localStorage").filter((key) => key.startsWith(PREFIX));

/** Whether any line is kept: quicker told than which. */
export const some = () => keys().some(line);

/** All kept lines that can be read, the last edited first. */
export function kept() {
  return keys()
    .map(line)
    .filter(Boolean)
    .sort((a, b) => b.saved - a.saved || a.id.localeCompare(b.id));
}

/** How many are kept beside those that can be read. */
export const unread = (readable = kept()) => keys().length - readable.length;

/** An id that no other line has: two are hardly made in one millisecond, let alone with one number drawn. */
export const fresh = () => `${Date.now()}-${draw_seed()}`;

/** Keeps a plan under an id; false where the device has no room or no store. */
export const keep = (id, plan, link) => put("localStorage", PREFIX + id, { plan, link, saved: Date.now() });

export const drop = (id) => lose("localStorage", PREFIX + id);

/** Calls `heard` when another tab writes the line that is edited here. */
export function onTaken(heard) {
  window.addEventListener("storage", ({ key, newValue }) => {
    if (key !== PREFIX + here.id || newValue === null) return;
    here.taken = true;
    heard();
  });
}
