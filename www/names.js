// What the features and riders of a plan are called.

import { called, kinds, numbered, rollers } from "./words.js";
import { features } from "./state.js";

/** The names of a plan's features, counted by kind; rollers one by one. */
export function names(plan) {
  const counts = {};
  return features(plan).map((feature) => {
    const { kind } = feature;
    if (kind === "start_ramp" || kind === "run_out") return kinds[kind];
    const first = (counts[kind] ?? 0) + 1;
    counts[kind] = first + (kind === "roller" ? feature.count : 1) - 1;
    return counts[kind] > first ? rollers(first, counts[kind]) : numbered(kind, first);
  });
}

/** What a plan's jumps are called, each by its row: as its feature, or by its lip's number where there is none. */
export function jumpNames(plan) {
  const named = names(plan);
  return ({ feature, lip }) => named[feature] ?? numbered("jump", lip + 1);
}

/** A line that comes with the page, called as the reader's language calls it. */
export function inWords(plan) {
  const word = (name) => called[name] ?? name;
  const riders = plan.riders.map((mount) => ({ ...mount, label: word(mount.label) }));
  return { ...plan, name: word(plan.name), riders };
}
