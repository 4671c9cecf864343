// The moment of the ride that is shown, and how fast it goes by.

import { state, tell } from "../state.js";

// How fast the ride goes by: as it is ridden, slower while the rider flies, or slow all along.
export const PACES = ["full", "air", "slow"];

export const clock = { time: 0, playing: false, pace: "full" };

const SLOW = 0.25;
// Slow motion sets in so long before a flight and lasts so long after it, s.
const AROUND = 0.12;
// How quickly one pace goes over into another, in times a second.
const EASE = 9;
// After a pause of the whole page the ride goes on where it was.
const LONGEST_FRAME = 0.1;

export const duration = () => state.story?.duration ?? 0;
export const atEnd = () => clock.time >= duration();

/** Goes to a moment, s. */
export function seek(time) {
  clock.time = Math.min(Math.max(time, 0), duration());
}

export function play() {
  if (atEnd()) clock.time = 0;
  clock.playing = true;
  tell("clock");
}

export function pause() {
  clock.playing = false;
  tell("clock");
}

let rate = 1;

function aim() {
  if (clock.pace !== "air") return clock.pace === "slow" ? SLOW : 1;
  const near = ([from, to]) => clock.time > from - AROUND && clock.time < to + AROUND;
  return state.story.flights.some(near) ? SLOW : 1;
}

/** Lets `seconds` of the reader's time go by. */
export function tick(seconds) {
  if (!clock.playing) return;
  const passed = Math.min(seconds, LONGEST_FRAME);
  rate += (aim() - rate) * Math.min(passed * EASE, 1);
  seek(clock.time + passed * rate);
  if (atEnd()) pause();
}

/** The trace's row at a moment, as an object by column. */
export function at(time) {
  const { trace, columns } = state.story;
  const width = columns.length;
  const rows = trace.length / width;
  const row = Math.min(Math.round(time * 100), rows - 1);
  return Object.fromEntries(columns.map((name, i) => [name, trace[row * width + i]]));
}

/** When the rider first comes to a station, s. */
export function timeAt(x) {
  const { trace, columns } = state.story;
  const width = columns.length;
  for (let i = 0; i < trace.length; i += width) if (trace[i + 1] >= x) return trace[i];
  return duration();
}
