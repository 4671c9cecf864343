// What the ride feels like at the moment that is shown: how heavy, how high, how long in the air, how fast.

import { state, onChange } from "../state.js";
import { fixed } from "../numbers.js";
import { shown } from "../units.js";
import { feel as words } from "../words.js";
import { at, clock } from "./clock.js";
import { say } from "./make.js";

const box = document.getElementById("feel");
const body = box.querySelector("svg g");
const [load, weight, where] = ["load", "weight", "where"].map((name) => box.querySelector(`[data-feel=${name}]`));

// Loads up to which each word holds, in body weights.
const WEIGHTS = [0.3, 0.8, 1.5, 2.8];
// Speeds up to which each word holds, m/s: what a child of ten walks, jogs and runs (common practice, no source).
const PACES = [0.3, 1.6, 3.2, 5.2];

// A figure that is pressed flat by the load and drawn out where there is none: how tall it stands under a
// load, and how far over the ground it floats, px.
const tall = (g) => Math.min(Math.max(1.18 - 0.18 * g, 0.35), 1.18);
const lift = (g) => Math.max(0.5 - g, 0) * 10;

/** The word that holds for a value. */
const wordFor = (list, limits, value) => list[limits.findIndex((limit) => value <= limit)] ?? list[limits.length];

function show() {
  if (!state.story) return;
  const { g, aloft, airtime, over, speed } = at(clock.time);
  body.style.transform = `translateY(${-lift(g)}px) scaleY(${tall(g)})`;
  say(load, fixed(g, 1));
  say(weight, wordFor(words.weights, WEIGHTS, g));
  say(where, aloft ? words.air(fixed(airtime, 1), shown(over, "length")) : wordFor(words.paces, PACES, speed));
}

export function startFeel() {
  onChange((what) => {
    if (what === "moment" || what === "structure") show();
  });
}
