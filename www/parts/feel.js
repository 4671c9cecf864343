// What the ride feels like at the moment that is shown: how heavy, how high, how long in the air, how fast.

import { state, onChange } from "../state.js";
import { shown } from "../units.js";
import { feel as words } from "../words.js";
import { at, clock } from "./clock.js";

const box = document.getElementById("feel");
const [load, weight, where] = ["load", "weight", "where"].map((name) => box.querySelector(`[data-feel=${name}]`));

// Loads up to which each word holds, in body weights.
const WEIGHTS = [0.3, 0.8, 1.5, 2.8];
// Speeds up to which each word holds, m/s: what a child of ten walks, jogs and runs (common practice, no source).
const PACES = [0.3, 1.6, 3.2, 5.2];

// How often the figures change, ms: faster is not read.
const TELL = 80;

let told = 0;

/** The word that holds for a value. */
const wordFor = (list, limits, value) => list[limits.findIndex((limit) => value <= limit)] ?? list[limits.length];

function show() {
  const now = performance.now();
  if (!state.story || (clock.playing && now - told < TELL)) return;
  told = now;
  const { g, aloft, airtime, over, speed } = at(clock.time);
  load.textContent = g.toFixed(1);
  weight.textContent = wordFor(words.weights, WEIGHTS, g);
  where.textContent = aloft ? words.air(airtime.toFixed(1), shown(over, "length")) : wordFor(words.paces, PACES, speed);
}

export function startFeel() {
  onChange((what) => {
    if (what === "frame" || what === "structure") show();
  });
}
