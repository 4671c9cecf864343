// Taking hold of a feature on the drawing: its grips, by finger, mouse and key.

import { state, onChange, features } from "../state.js";
import { grips as words } from "../words.js";
import * as ahead from "./ahead.js";
import { clock, pause } from "./clock.js";
import { fit, holdable, look, gripsOf } from "./drawing.js";
import { make } from "./make.js";

const frame = document.querySelector(".frame");

// Dragged figures are whole in the reader's own small step, m: a centimetre, a quarter of an inch.
const WHOLE = { metric: 0.01, feet: 0.00635 };
// What one press of an arrow key moves, m.
const PRESS = { metric: 0.05, feet: 0.0508 };

// Fewest pixels to a metre that a finger's way is taken for: where the picture is smaller, as that of the whole line,
// the grip follows more slowly, so that a finger can still be told from a hand.
const FINEST = 50;

const held = { grip: null };

const whole = (value) => {
  const step = WHOLE[state.system];
  return Number((Math.round(value / step) * step).toPrecision(12));
};

/** What a part moves by: from the plan as it was when it was taken, metres to the right and up. */
const moves = {
  platform: (feature, dx, dy) => {
    feature.platform_height = whole(feature.platform_height + dy);
  },
  top: (feature, dx, dy) => {
    feature.height = whole(feature.height + dy);
  },
  lip: (feature, dx, dy, before) => {
    feature.lip.height = whole(feature.lip.height + dy);
    // The landing stays where it is, where there is flat ground to give and take.
    const by = Math.min(dx, feature.gap);
    feature.gap = whole(feature.gap - by);
    if (before?.kind === "flat") before.length = whole(Math.max(before.length + by, 0.05));
  },
  knuckle: (feature, dx, dy) => {
    feature.landing.height = whole(feature.landing.height + dy);
    feature.gap = whole(Math.max(feature.gap + dx, 0));
  },
};

/** Moves a part of the chosen feature, counted from `base`, the features as they were. */
function move(part, base, dx, dy) {
  const i = state.chosen;
  ahead.move((plan) => {
    const all = structuredClone(base);
    moves[part](all[i], dx, dy, all[i - 1]);
    plan.line.features = all;
  }, held.time);
}

function follow() {
  const { part, base, scale, from, to } = held;
  move(part, base, (to.x - from.x) / scale, (from.y - to.y) / scale);
}

/** One edit a frame is enough for the eye; the first is made at once, so that this frame shows it. */
function drag(event) {
  if (!held.grip) return;
  held.to = { x: event.clientX, y: event.clientY };
  if (held.waiting) {
    held.late = true;
    return;
  }
  follow();
  held.waiting = requestAnimationFrame(() => {
    held.waiting = 0;
    if (held.late && held.grip) follow();
    held.late = false;
  });
}

/** The grip whose middle is nearest to a finger: where the picture is small they lie over each other. */
function nearest({ clientX, clientY }) {
  const off = (grip) => {
    const { left, top, width, height } = grip.getBoundingClientRect();
    return Math.hypot(left + width / 2 - clientX, top + height / 2 - clientY);
  };
  return [...frame.querySelectorAll(".grip")].reduce((a, b) => (off(b) < off(a) ? b : a));
}

function take(event) {
  const meant = nearest(event);
  const { part, scale } = meant.dataset;
  pause();
  ahead.warm();
  look.held = gripsOf(state.chosen, clock.time).focus;
  const at = { x: event.clientX, y: event.clientY };
  Object.assign(held, { grip: event.currentTarget, part, scale: Math.max(Number(scale), FINEST), from: at, to: at, base: structuredClone(features(state.plan)), time: event.timeStamp });
  fit();
  event.currentTarget.setPointerCapture(event.pointerId);
  event.preventDefault();
  // The page stays where it is under the finger.
  meant.focus({ preventScroll: true });
}

function leave() {
  if (!held.grip) return;
  if (held.late) follow();
  held.late = false;
  held.grip = null;
  held.time = undefined;
  look.held = null;
  ahead.leave();
  fit();
}

function press(event) {
  const ways = { ArrowUp: [0, 1], ArrowDown: [0, -1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] };
  const way = ways[event.key];
  if (!way) return;
  event.preventDefault();
  pause();
  const step = PRESS[state.system];
  // Held, the ride does not set in again, and the grip stays under the key.
  look.held = gripsOf(state.chosen, clock.time).focus;
  move(event.currentTarget.dataset.part, features(state.plan), way[0] * step, way[1] * step);
  look.held = null;
  ahead.leave();
}

function grip(part) {
  const made = make("button", { type: "button", className: "grip", data: { part } });
  made.setAttribute("aria-label", words[part]);
  made.title = words[part];
  made.addEventListener("pointerdown", take);
  made.addEventListener("pointermove", drag);
  made.addEventListener("pointerup", leave);
  made.addEventListener("pointercancel", leave);
  made.addEventListener("keydown", press);
  return made;
}

/** Puts what takes a finger over the grips of the chosen feature that the drawing has. */
function place() {
  // What a finger holds is moved once it is let go.
  if (held.grip) return;
  const all = holdable() ? (gripsOf(state.chosen, clock.time)?.grips ?? []) : [];
  const now = [...frame.querySelectorAll(".grip")];
  for (const gone of now) if (!all.some((g) => g.part === gone.dataset.part)) gone.remove();
  for (const { part, x, y, scale } of all) {
    let button = now.find((g) => g.dataset.part === part);
    if (!button) frame.append((button = grip(part)));
    button.style.translate = `${x}px ${y}px`;
    button.dataset.scale = scale;
  }
}

export function startGrips() {
  onChange((what) => {
    if (["frame", "chosen", "clock", "structure"].includes(what)) place();
  });
}
