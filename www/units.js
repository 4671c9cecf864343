// Quantities in the reader's units. The rules are the simulator's own.

import { read as number, show, write } from "./carryline.js";
import { put, read } from "./device.js";
import { pointed, spelt } from "./numbers.js";
import { state } from "./state.js";
import { faults } from "./words.js";
import { notRead } from "./wrong.js";

const KEY = "carryline.units";

/** Chosen before, or usual where the browser's language comes from. */
function usualSystem() {
  const kept = read("localStorage", KEY);
  if (kept === "metric" || kept === "feet") return kept;
  return /-(US|LR|MM)\b/.test(navigator.language) ? "feet" : "metric";
}

function keepSystem(system) {
  state.system = system;
  put("localStorage", KEY, system);
}

/** Lets the reader choose; `then` follows a choice. */
export function offerSystems(then) {
  keepSystem(usualSystem());
  for (const radio of document.querySelectorAll("#units input")) {
    radio.checked = radio.value === state.system;
    radio.addEventListener("change", () => {
      keepSystem(radio.value);
      then();
    });
  }
}

export const shown = (value, quantity) => spelt(show(value, quantity, state.system));

// What can be dug, or told from another by feel, m: five centimetres, two inches.
const ROUGH = { metric: 0.05, feet: 0.0508 };

/** A length as exactly as it can be dug or felt. */
export function rough(metres, round = Math.round) {
  const step = ROUGH[state.system];
  return shown(round(Number((metres / step).toPrecision(9))) * step, "length");
}

/** A limit, rounded to the side on which it is kept: what is written is accepted when typed. */
export function limit(value, quantity, side) {
  const { step } = write(value, quantity, state.system);
  const whole = side === "least" ? Math.ceil(value / step - 1e-6) : Math.floor(value / step + 1e-6);
  return shown(step ? whole * step : value, quantity);
}

/** What a fault's field accepts; nothing where there is no limit. */
export function accepted({ quantity, least, most }) {
  const [low, high] = [least, most].map((value, i) => value != null && limit(value, quantity, ["least", "most"][i]));
  if (low && high) return faults.between(low, high);
  return low ? faults.least(low) : high ? faults.most(high) : "";
}

// Longest exact text that a field shows, in characters; what is longer is rounded.
const READABLE = 8;

/** As it stands in a field: exact where that can be read at a glance. */
export function typed(value, quantity) {
  const { field } = write(value, quantity, state.system);
  return field.length > READABLE ? shown(value, quantity) : spelt(field);
}

/** The number typed; throws a sentence where it is none. */
export function parse(text, quantity) {
  try {
    return number(pointed(text), quantity, state.system);
  } catch (error) {
    throw notRead({ ...error, given: text });
  }
}

/** A figure and its unit apart, as for large type. */
export function apart(value, quantity) {
  const text = shown(value, quantity);
  const cut = text.lastIndexOf(" ");
  return cut < 0 ? [text, ""] : [text.slice(0, cut), text.slice(cut + 1)];
}

/** The number alone, for another program, and the unit it is in. */
export function plain(value, quantity) {
  const { plain, unit } = write(value, quantity, state.system);
  return [plain, unit];
}

// What one press of − or + changes: round in the reader's own units.
const steps = {
  metric: { length: 0.05, angle: 1, speed: 0.5 / 3.6, time: 0.1, mass: 1, area: 0.01, pressure: 10000, temperature: 1, inertia: 0.005, number: 0.05, count: 1 },
  feet: { length: 0.0508, angle: 1, speed: 0.22352, time: 0.1, mass: 0.90718474, area: 0.009290304, pressure: 6894.757293168, temperature: 1, inertia: 0.005, number: 0.05, count: 1 },
};

/** The next round value in a direction. */
export function stepped(value, quantity, direction, finer) {
  const step = (steps[state.system][quantity] ?? 1) * (finer ?? 1);
  return Number((Math.round(value / step + direction) * step).toPrecision(12));
}
