// The drawing: keeps the canvas sharp, paints every frame, and knows what was tapped.

import { Drawing } from "../carryline.js";
import { state, onChange, takeRiding, choose, tell } from "../state.js";
import { apart } from "../units.js";
import { names } from "../names.js";
import { state as words } from "../words.js";
import { clock, tick, at, seek, play, timeAt } from "./clock.js";

const canvas = document.getElementById("drawing");
const now = document.getElementById("now");
const page = document.documentElement;
const night = matchMedia("(prefers-color-scheme: dark)");
const calm = matchMedia("(prefers-reduced-motion: reduce)");

export const look = { whole: calm.matches };

// How long the path before a change stays on the sheet, ms.
const KEEP_BEFORE = 2500;
// How long before the changed feature the ride sets in again, s.
const RUN_UP = 0.8;

let drawing;
let changed = -Infinity;
let last = 0;
let stale = true;

/** Asks for a new picture although no time has gone by. */
export const repaint = () => (stale = true);

function fit() {
  const ratio = Math.min(devicePixelRatio || 1, 3);
  const { clientWidth, clientHeight } = canvas;
  canvas.width = Math.round(clientWidth * ratio);
  canvas.height = Math.round(clientHeight * ratio);
  repaint();
}

function labels() {
  const speeds = state.story.jumps.map((j) => (j.speed == null ? "–" : apart(j.speed, "speed")[0]));
  const unit = apart(0, "speed")[1];
  return { features: names(state.good), speeds, unit };
}

function take() {
  const riding = takeRiding();
  if (!riding) return;
  const first = last === 0;
  drawing.show(riding, labels());
  changed = first ? -Infinity : performance.now();
  const feature = state.story.features[state.chosen];
  seek(feature ? Math.max(timeAt(feature.from) - RUN_UP, 0) : 0);
  repaint();
  play();
}

function paint(before) {
  const chosen = state.faults.length ? undefined : (state.chosen ?? undefined);
  const { clientWidth: width, clientHeight: height } = canvas;
  drawing.paint({ time: clock.time, width, height, whole: look.whole, chosen, before, night: night.matches });
}

function tellNow() {
  const row = at(clock.time);
  page.dataset.time = clock.time.toFixed(3);
  page.dataset.riderX = row.x.toFixed(3);
  const [figure, unit] = apart(row.speed, "speed");
  now.firstElementChild.textContent = `${figure} ${unit}`;
  now.lastElementChild.textContent = row.g === 0 ? words.air : "";
}

function frame(stamp) {
  const seconds = last ? (stamp - last) / 1000 : 0;
  last = stamp;
  if (state.story) {
    const before = stamp - changed < KEEP_BEFORE;
    if (clock.playing || stale || before !== frame.before) {
      stale = false;
      frame.before = before;
      tick(seconds);
      paint(before);
      tellNow();
      tell("frame");
    }
  }
  requestAnimationFrame(frame);
}

function tapped(event) {
  const box = canvas.getBoundingClientRect();
  const feature = drawing.feature_at(event.clientX - box.left, event.clientY - box.top);
  if (feature !== undefined) choose(feature);
}

export function startDrawing() {
  drawing = new Drawing(canvas);
  new ResizeObserver(fit).observe(canvas);
  night.addEventListener("change", repaint);
  canvas.addEventListener("click", tapped);
  onChange((what) => {
    if (what === "plan" || what === "structure") take();
    if (what === "chosen") repaint();
  });
  requestAnimationFrame(frame);
}
