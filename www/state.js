// What the page knows: the plan being edited, the last ride that worked, and who wants to hear of it.

import { demo, ride } from "./carryline.js";
import { unlessHeld } from "./finger.js";
import { back, forget, forth, note } from "./history.js";
import { steadily } from "./steady.js";

export const state = {
  plan: null, // as edited, perhaps with faults
  story: null, // of the last ride that worked
  good: null, // the plan of that ride
  borrowed: false, // whether that is another line's: the one that was opened has never been ridden
  study: {}, // what was found out by riding it again and again, part by part as it comes in
  faults: [],
  system: "metric",
  against: null, // another line it is compared with: its name and its jumps
  chosen: null, // index of the feature being edited
  looking: false, // at somebody else's line, which is not edited before it is copied
};

const listeners = [];

/**
 * Calls `listener(what)` after every change; `what` is "plan" (numbers), "structure"
 * (features came, went or moved, or other units), "name", "opened" (another line, before the rest follows), "chosen", "clock", "frame", "moment" (some frames of many), "study", "against", "sketched" (while
 * something is dragged), "left" (it is let go), "ridden" (what was dragged) or "others" (who ride after the first of a visit).
 * Who comes when there is a ride hears of it at once.
 */
export function onChange(listener) {
  listeners.push(listener);
  if (state.story) listener("structure");
}

// What changes rows all over the page while one of them is looked at.
const FAR = ["plan", "study"];

export function tell(what) {
  const all = () => listeners.forEach((listener) => listener(what));
  if (FAR.includes(what)) steadily(all);
  else all();
}

let riding = null;

/** The ride that the drawing has not taken yet; it is given away once. */
export function takeRiding() {
  const taken = riding;
  riding = null;
  return taken;
}

/** The ride of another line, to be compared with; it is no concern of the plan's. */
export function rideOf(plan) {
  return ride(plan);
}

// How many of the plan's riders ride: to be seen soon, the one whom the line is for rides alone at first.
let most = 1;

/** Rides the plan. The last good ride stays where the plan has faults. */
function attempt() {
  try {
    const next = ride(state.plan, most);
    riding?.free();
    riding = next;
    state.story = next.story();
    // What was found out belongs to the line before.
    state.study = {};
    state.good = state.plan;
    state.borrowed = false;
    state.faults = [];
  } catch (faults) {
    if (!Array.isArray(faults)) throw faults;
    state.faults = faults;
  }
}

/** Takes another plan; `looking` at one that somebody sent. Where it has faults, and nothing has been ridden yet, there
 * is the ride `before` to look at, or the demonstration's. */
export function open(plan, looking = false, before = null) {
  state.looking = looking;
  state.chosen = null;
  forget();
  state.borrowed = true;
  state.plan = plan;
  attempt();
  if (!state.story) {
    const { faults } = state;
    state.plan = before ?? demo();
    attempt();
    Object.assign(state, { plan, faults, borrowed: true });
  }
  tell("opened");
  tell("structure");
}

/** Changes a copy of the plan and rides it; `what` says how much of the page has to follow. */
export function edit(change, what = "plan") {
  const plan = structuredClone(state.plan);
  change(plan);
  note(state.plan, what);
  state.plan = plan;
  attempt();
  tell(what);
}

/** Changes a copy of the plan while something is `held`; it is ridden elsewhere. */
export function sketch(change, held) {
  const plan = structuredClone(state.plan);
  change(plan);
  note(state.plan, "plan", held);
  state.plan = plan;
}

/** Takes over the story of a plan that was ridden elsewhere. */
export function settle(plan, story) {
  state.story = story;
  state.study = {};
  state.good = plan;
  state.borrowed = false;
  tell("ridden");
}

function step(plan) {
  if (!plan) return;
  state.plan = plan;
  if (state.chosen >= features(plan).length) state.chosen = null;
  attempt();
  tell("structure");
}

export const undo = () => step(back(state.plan));
export const redo = () => step(forth(state.plan));

/** From now on all riders ride. */
export function rideOthers() {
  most = undefined;
  if (state.plan.riders.length > 1) attempt();
  unlessHeld(() => tell("others"));
}

/** Rides again and writes everything anew, as when the units change. */
export function rewrite() {
  attempt();
  tell("structure");
}

export function choose(feature) {
  state.chosen = feature;
  tell("chosen");
}

/** The features of a plan; none where the line was surveyed. */
export const features = (plan) => plan.line.features ?? [];
