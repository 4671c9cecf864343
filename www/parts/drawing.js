// The drawing, from the side and from the saddle: keeps the canvases sharp, paints every frame, and knows what was tapped.

import { Drawing } from "../carryline.js";
import { state, onChange, takeRiding, choose, tell, features } from "../state.js";
import { apart, shown } from "../units.js";
import { get } from "./path.js";
import { names } from "../names.js";
import { state as words, energyLine, rolling } from "../words.js";
import { say } from "./make.js";
import { clock, tick, at, seek, play, pause, timeAt } from "./clock.js";

const canvas = document.getElementById("drawing");
const saddle = document.getElementById("saddle");
const frameBox = canvas.parentElement;
const now = document.getElementById("now");
const page = document.documentElement;
const night = matchMedia("(prefers-color-scheme: dark)");
const calm = matchMedia("(prefers-reduced-motion: reduce)");

// `saddle` chooses what a narrow screen shows; a wide one has room for both.
export const look = { whole: calm.matches, held: null, zoom: 1, saddle: false };

// Each canvas, the most pixels it has to one of the page's (writing needs them, a view that is all in motion
// does not), and its size, px: the page is not laid out anew for every frame just to ask for it.
const sheets = {
  side: { canvas, sharpest: 3, width: 0, height: 0 },
  saddle: { canvas: saddle, sharpest: 1.5, width: 0, height: 0 },
};

// How long the path before a change stays on the sheet, ms.
const KEEP_BEFORE = 2500;
// How long before the changed feature the ride sets in again, s.
const RUN_UP = 0.8;

// Nearest and farthest that the view that follows goes, in times of the usual.
const ZOOM = [0.4, 3];

// How far a finger moves before it drags, px.
const DRAG = 6;
// How often figures, words and the slider follow the ride, ms, all in the same frame: faster is not read, and
// each time the page is laid out anew.
const TELL = 80;

let drawing;
let scale = 1; // px to the metre, as last painted
let changed = -Infinity;
let told = 0;
let last = 0;
let stale = true;

/** Shows another line's ride pale under this one; none without a ride. */
export function compare(riding) {
  drawing.compare(riding);
  repaint();
}

// Labels of the rides shown pale beside this one.
let ghosts = [];

/** Shows other rides down this line pale beside it, each as its label and its ride. */
export function haunt(rides) {
  drawing.clear_ghosts();
  for (const [, riding] of rides) drawing.add_ghost(riding);
  ghosts = rides.map(([label]) => label);
  drawing.show(undefined, labels());
  repaint();
}

/** Lays the ground of a plan under the ride shown; gives what is wrong with it. */
export function lay(plan) {
  try {
    drawing.lay(plan);
  } catch (faults) {
    if (!Array.isArray(faults)) throw faults;
    return faults;
  }
  return [];
}

/** Shows what was ridden elsewhere: a plan's riders' traces. */
export function showTraces(plan, traces) {
  drawing.show_traces(plan, traces);
}

/** Where a feature can be taken hold of, as last painted. */
export const gripsOf = (feature, time) => drawing.grips(feature, time);

/** Comes nearer to the drawing, or goes farther from it. */
export function zoom(times) {
  look.zoom = Math.min(Math.max(look.zoom * times, ZOOM[0]), ZOOM[1]);
  repaint();
}

/** Asks for a new picture although no time has gone by. */
export const repaint = () => (stale = true);

/** The whole line as a picture: see `svg` of the simulator's drawing. */
export const svgOf = (...order) => drawing.svg(...order);

/** Takes the canvases' sizes, and makes them as sharp as they have to be. */
export function fit() {
  for (const sheet of Object.values(sheets)) {
    const { clientWidth: width, clientHeight: height } = sheet.canvas;
    // Under a moving finger quick is better than sharp.
    const ratio = Math.min(devicePixelRatio || 1, look.held ? 1 : sheet.sharpest);
    Object.assign(sheet, { width, height });
    sheet.canvas.width = Math.round(width * ratio);
    sheet.canvas.height = Math.round(height * ratio);
  }
  repaint();
}

/** Shows the sides of the ride that were chosen. */
export function arrange() {
  frameBox.dataset.view = look.whole ? "whole" : look.saddle ? "saddle" : "side";
  repaint();
}

// The measures of each kind of feature, in the order in which the drawing has them.
const measured = {
  start_ramp: ["platform_height"],
  flat: ["length"],
  roller: ["height", "length"],
  jump: ["lip.height", "gap", "landing.height"],
  turn: [],
  run_out: ["length"],
};

function dimensions() {
  // While something is dragged its numbers are those of the plan, which may not be ridden yet.
  const feature = features(look.held ? state.plan : state.good)[state.chosen];
  return feature ? measured[feature.kind].map((path) => shown(get(feature, path), "length")) : [];
}

function labels() {
  const speeds = state.story.jumps.map((j) => (j.speed == null ? "–" : apart(j.speed, "speed")[0]));
  const [, unit] = apart(0, "speed");
  const end = (speed) => apart(speed, "speed")[0];
  const ranges = (state.study.spreads ?? []).map((s) => (s.slowest == null ? "" : `${end(s.slowest)}–${end(s.fastest)}`));
  const called = names(state.good);
  // Where the rider cannot stop, the drawing says so at the place.
  if (state.story.ending.how === "leaves" && called.length) called.push(rolling(called.pop(), shown(state.story.ending.speed, "speed")));
  return { features: called, speeds, ranges, unit, dimensions: dimensions(), energy: energyLine, ghosts, others: state.good.riders.slice(1).map(({ label }) => label) };
}

function take(restart) {
  const riding = takeRiding();
  if (!riding) return;
  const first = last === 0;
  drawing.show(riding, labels());
  repaint();
  // While something is dragged, the picture stays where it is.
  if (!restart || look.held) return;
  changed = first ? -Infinity : performance.now();
  const feature = state.story.features[state.chosen];
  seek(feature ? Math.max(timeAt(feature.from) - RUN_UP, 0) : 0);
  // Where motion is not wanted, the ride waits to be asked for.
  if (!calm.matches) play();
}

/** Whether the drawing, which shows the last good line, has the features that the list has. */
const same = () => features(state.plan).length === features(state.good).length;

/** Whether the chosen feature can be taken hold of. */
export const holdable = () => state.chosen != null && !state.looking && !clock.playing && same();

function paint(before) {
  const chosen = same() ? (state.chosen ?? undefined) : undefined;
  const grips = holdable();
  const { width, height } = sheets.side;
  const { time } = clock;
  const still = calm.matches;
  if (width) scale = drawing.paint({ time, width, height, whole: look.whole, chosen, grips, before, held: look.held ?? undefined, zoom: look.zoom, still });
  const { width: across, height: down } = sheets.saddle;
  // Where motion is not wanted, the rider's eye opens once a second.
  if (across) drawing.paint_saddle(still ? Math.floor(time) : time, across, down);
}

function tellNow() {
  const row = at(clock.time);
  const [figure, unit] = apart(row.speed, "speed");
  say(now.firstElementChild, `${figure} ${unit}`);
  say(now.lastElementChild, row.aloft ? words.air : "");
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
      tell("frame");
      if (!clock.playing || stamp - told >= TELL) {
        told = stamp;
        tellNow();
        tell("moment");
      }
    }
  }
  requestAnimationFrame(frame);
}

/** Holds the ride where the chosen feature is in sight, so that it can be taken hold of. */
function show() {
  const feature = state.story?.features[state.chosen];
  if (!feature) return;
  pause();
  const { x } = at(clock.time);
  if (x < feature.from || x > feature.to) seek(timeAt(feature.from));
}

function chooseAt(x, y) {
  const feature = drawing.feature_at(x, y);
  if (feature !== undefined) choose(feature);
}

// Fingers on the drawing, by pointer.
const fingers = new Map();

const between = () => {
  const [a, b] = fingers.values();
  return Math.hypot(a.x - b.x, a.y - b.y);
};

/** A finger more; whether there are two now. */
function pinch(event) {
  fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
  return fingers.size === 2;
}

/** A finger moves; where there are two, the drawing comes nearer as they part. */
function spread(event) {
  if (fingers.size !== 2 || !fingers.has(event.pointerId)) return false;
  const before = between();
  fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
  if (before > 0) zoom(between() / before);
  return true;
}

// How much a wheel is turned, in e-foldings of the view, for one of each unit that browsers count in: px,
// lines, pages. What spreads two fingers on a pad comes as a wheel with a key held, in small steps.
const TURN = [0.002, 0.05, 0.5];
const SPREAD = 5;

const turned = (event) => event.deltaY * TURN[event.deltaMode] * (event.ctrlKey ? SPREAD : 1);

/** A tap chooses a feature; a drag along the ground takes the ride with it. */
function startHand() {
  let held = null;
  canvas.addEventListener("pointerdown", (event) => {
    if (pinch(event)) return;
    held = { x: event.clientX, station: at(clock.time).x, dragged: false };
  });
  canvas.addEventListener("pointermove", (event) => {
    if (spread(event)) held = null;
    if (!held || look.whole) return;
    const moved = event.clientX - held.x;
    if (!held.dragged && Math.abs(moved) < DRAG) return;
    if (!held.dragged) {
      held.dragged = true;
      canvas.setPointerCapture(event.pointerId);
      pause();
    }
    seek(timeAt(held.station - moved / scale));
    repaint();
  });
  canvas.addEventListener("pointerup", (event) => {
    fingers.delete(event.pointerId);
    const box = canvas.getBoundingClientRect();
    if (held && !held.dragged) chooseAt(event.clientX - box.left, event.clientY - box.top);
    held = null;
  });
  canvas.addEventListener("pointercancel", (event) => {
    fingers.delete(event.pointerId);
    held = null;
  });
  // The grips lie over the drawing.
  canvas.parentElement.addEventListener(
    "wheel",
    (event) => {
      if (event.target === saddle) return;
      event.preventDefault();
      zoom(Math.exp(-turned(event)));
    },
    { passive: false },
  );
  canvas.addEventListener("keydown", (event) => {
    const x = at(clock.time).x;
    const feature = state.story.features.findIndex((f) => x >= f.from && x < f.to);
    if (event.key === "Enter" && feature >= 0) choose(feature);
  });
}

export function startDrawing() {
  drawing = new Drawing(canvas, saddle);
  const observer = new ResizeObserver(fit);
  observer.observe(canvas);
  observer.observe(saddle);
  night.addEventListener("change", () => {
    drawing.take_colours();
    repaint();
  });
  arrange();
  startHand();
  onChange((what) => {
    if (["plan", "structure", "name", "others"].includes(what)) take(what === "plan" || what === "structure");
    if (what === "chosen") show();
    if (["chosen", "study", "ridden"].includes(what)) drawing.show(undefined, labels());
    if (what === "sketched") drawing.measure(dimensions());
    if (["chosen", "study", "ridden", "sketched"].includes(what)) repaint();
  });
  requestAnimationFrame(frame);
}
