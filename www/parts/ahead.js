// While a finger drags: the ground follows at once, and is ridden beside the page as quickly as that can be.

import { state, edit, settle, sketch, tell } from "../state.js";
import { ask, goOn, makeRoom } from "./beside.js";
import { lay, showTraces } from "./drawing.js";

// How long the page draws the ground alone before it takes the next ride, ms: to take one costs a frame.
const REST = 90;

// The plan that is being ridden, and the one that is to be ridden next: those between are left out.
let under = null;
let next = null;
let dragging = false;
let resting = false;

function take(plan, { story, traces }) {
  // Meanwhile something else was done to the plan.
  if (!dragging && plan !== state.plan) return;
  showTraces(plan, traces);
  if (plan !== state.plan) lay(state.plan);
  settle(plan, story);
}

/** A plan was ridden; where no worker could do it, the page rides by itself. */
function ridden(plan, answer) {
  under = null;
  if (answer === undefined) {
    next = null;
    edit(() => {});
    return;
  }
  if (answer) take(plan, answer);
  resting = dragging;
  if (resting) setTimeout(rested, REST);
  else go();
}

function rested() {
  resting = false;
  go();
}

function go() {
  if (under || resting) return;
  if (next) {
    const plan = next;
    under = plan;
    next = null;
    // While it is dragged the rider whom the line is for rides alone.
    ask("ride", { part: "ride", plan, riders: dragging ? 1 : undefined }, (answer) => ridden(plan, answer));
  } else if (!dragging) tell("plan");
}

/** Gets ready to ride, so that the first move does not wait for it. */
export const warm = makeRoom;

/** Changes the plan and shows its ground; its ride follows. `held` tells what is held from what is held next. */
export function move(change, held) {
  dragging = true;
  sketch(change, held);
  state.faults = lay(state.plan);
  next = state.faults.length ? null : state.plan;
  go();
  tell("sketched");
}

/** The last move was made: all of the page follows once that is ridden. Where there was none, all goes on. */
export function leave() {
  if (!dragging) return goOn();
  dragging = false;
  // Now all of them ride.
  if (!state.faults.length) next = state.plan;
  go();
  tell("left");
}
