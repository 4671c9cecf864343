// The speeds at which a jump works, as a bar: where this rider is, and how much there is to spare.

import { fixed } from "../numbers.js";
import { apart, limit, rough, shown } from "../units.js";
import { state, edit } from "../state.js";
import * as words from "../words.js";
import { make } from "./make.js";

// What a bar shows beside its window, m/s.
const BESIDE = 1.2;

// Less speed than this is not worth a word, m/s.
const STILL = 0.03;

const speed = (value) => shown(value, "speed");

/** The least that is to spare on either side, m/s; below 0 where the speed lies outside. */
export const spare = (window, at) =>
  window?.slowest == null || at == null ? null : Math.min(at - window.slowest, window.fastest - at);

function place(element, from, to, low, high) {
  const share = (v) => `${((v - low) / (high - low)) * 100}%`;
  element.style.left = share(Math.max(from, low));
  element.style.width = `calc(${share(low + Math.min(to, high) - Math.max(from, low))})`;
  return element;
}

function bar(window, spread, at) {
  const ends = [window.slowest, window.fastest, at, spread?.slowest, spread?.fastest].filter((v) => v != null);
  const [low, high] = [Math.min(...ends) - BESIDE / 2, Math.max(...ends) + BESIDE / 2];
  const box = make("div", { className: "bar", ariaHidden: "true" });
  box.append(place(make("i", { className: "works" }), window.slowest, window.fastest, low, high));
  if (spread?.slowest != null) box.append(place(make("i", { className: "range" }), spread.slowest, spread.fastest, low, high));
  if (at != null) box.append(place(make("i", { className: "at" }), at, at, low, high));
  const ends_ = make("p", {}, make("span", {}, words.tooSlow[window.below] ?? words.tooSlow.other), make("span", {}, words.tooFast[window.above] ?? words.tooFast.other));
  return make("div", { className: "window" }, box, ends_);
}

// How a jump goes that has nothing to spare, whatever the speed.
const GONE_WRONG = ["short", "stalled", "crashed", "past"];

function told(window, { speed: at, how }) {
  if (window.slowest == null) return words.noWindow;
  const range = words.window(apart(window.slowest, "speed")[0], speed(window.fastest));
  if (at == null) return range;
  const [below, above] = [at - window.slowest, window.fastest - at];
  if (below < 0) return `${range} ${words.missing(speed(-below))}`;
  if (above < 0) return `${range} ${words.over(speed(-above))}`;
  // The stretch that was ridden alone came to the lip otherwise than the whole ride does.
  if (GONE_WRONG.includes(how)) return range;
  return `${range} ${words.spare(speed(below), speed(above))}`;
}

function suggestion(found) {
  const [now, then] = [found.now, found.then].map((v) => shown(v, "length"));
  const text = words.suggest[found.lever](now, then);
  const button = make("button", { type: "button", className: "try" }, words.tryIt);
  button.setAttribute("aria-label", `${words.tryIt}: ${text}`);
  button.addEventListener("click", () =>
    edit((plan) => {
      const feature = plan.line.features[found.feature];
      if (found.lever === "gap") feature.gap = found.then;
      else feature.platform_height = found.then;
    }, "structure"),
  );
  return make("p", { className: "suggestion" }, text, " ", button);
}

/** How somebody else fares at a jump, and what that says of the rider whom the line is for. */
function beside(jump, other) {
  const row = other.jumps[jump.lip];
  const first = state.good.riders[0].label;
  const said = [words.otherAt(other.label, row.speed == null ? null : speed(row.speed), words.howShort[row.how])];
  if (row.speed != null && jump.speed != null) {
    const by = jump.speed - row.speed;
    if (Math.abs(by) > STILL) said.push(words.apart(first, speed(Math.abs(by)), by < 0));
  }
  if (row.how === "clean" && jump.how !== "clean") said.push(words.noProof(other.label, first));
  return said.join(" ");
}

/** How far one thing that is dug may be off, in what can be dug: never more than was found. */
const named = ({ dimension, more, most }) => words.dug.limit(words.dug.kinds[dimension], more, most && limit(most, "margin", "most"));

/** The tightest of what is dug for a jump, and what is beyond; nothing where there is room for all. */
export const tightest = ({ limits: [first] }) => first && words.dug.beyond(named(first), words.howShort[first.beyond]);

/** How far what is dug for a jump may be off. */
export const dug = (tolerance) => words.dug.told(tightest(tolerance), tolerance.limits.slice(1).map(named), limit(tolerance.looked, "margin", "most"));

/** All that is known of a jump beside its own row: nothing where nothing is known yet. */
export function more(jump, { spreads, windows, suggestions, tolerances } = {}, impact, others) {
  const window = windows?.[jump.lip];
  const box = make("div");
  if (window) {
    if (window.slowest != null) box.append(bar(window, spreads?.[jump.lip], jump.speed));
    box.append(make("p", {}, told(window, jump)));
  }
  if (impact) {
    const [g, left] = [fixed(impact.peak_g, 1), shown(impact.travel_left, "length")];
    const turn = Math.round((Math.abs(jump.pitch_to_slope) * 180) / Math.PI);
    box.append(make("p", {}, words.impact(impact.first, g, left, words.pitched(turn, jump.pitch_to_slope > 0), rough(jump.fall_height))));
    if (impact.lost > 0.01) box.append(make("p", {}, words.landingLost(shown(impact.lost, "length"), impact.next_lip > STILL ? speed(impact.next_lip) : null)));
  }
  const tolerance = tolerances?.find((t) => t.lip === jump.lip);
  if (tolerance) box.append(make("p", { className: "dug" }, dug(tolerance)));
  const found = suggestions?.find((s) => s.lip === jump.lip);
  if (found) box.append(suggestion(found));
  for (const other of others) box.append(make("p", { className: "other" }, beside(jump, other)));
  const other = state.against?.jumps[jump.lip];
  if (other) box.append(make("p", { className: "against" }, words.otherAt(state.against.name, other.speed == null ? null : speed(other.speed), words.howShort[other.how])));
  return box;
}
