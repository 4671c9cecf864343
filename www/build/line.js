// Which line the sheets are of: the one in the address, or the one edited last on this device; and how it is followed
// while it is edited in another tab.

import { demo, link_to, open } from "../carryline.js";
import { inWords } from "../names.js";
import { here, kept, onTaken } from "../store.js";

const hash = () => (location.hash.length > 1 ? location.hash : "");

/** The line to show: its plan, one of before that could be ridden, and what is wrong with its link. */
export function line() {
  const all = kept();
  const entry = hash() ? all.find(({ link }) => link.includes(hash())) : all[0];
  here.id = entry?.id ?? null;
  if (entry) return { plan: entry.plan, before: before(entry) };
  if (!hash()) return { plan: inWords(demo()) };
  const { plan, trouble, fault } = open(hash());
  return { plan: trouble || fault ? inWords(plan) : plan, trouble, fault };
}

/** The plan of the last ride that worked, where the line has a fault just now. */
const before = ({ link }) => link[1] && open(link[1]).plan;

/** Calls `heard` with the line once it is changed in another tab, or another one is in the address. */
export function onLine(heard) {
  onTaken(() => {
    here.taken = false;
    const entry = kept().find(({ id }) => id === here.id);
    if (!entry) return;
    // The address stays that of the line as it is shown.
    if (hash()) history.replaceState(null, "", entry.link[0]);
    heard({ plan: entry.plan, before: before(entry) });
  });
  window.addEventListener("hashchange", () => heard(line()));
}

/** The way back to it. */
export const wayTo = (plan) => `./#${link_to(plan)}`;
