// What is said of the test day, on the page and on paper: what to see at each flag, when to stop.

import { state } from "../state.js";
import { apart, rough, shown } from "../units.js";
import { pointed } from "../numbers.js";
import { names } from "../names.js";
import { howShort, testDay as words } from "../words.js";
import { make } from "./make.js";
import { tightest } from "./window.js";

const speed = (value) => shown(value, "speed");

// Nobody feels a wind finer than this: whole units, and rather less than more.
const wind = (value) => {
  const [figure, unit] = apart(value, "speed");
  return `${Math.floor(parseFloat(pointed(figure)))} ${unit}`;
};

/** The sentences on one jump, in the order in which it is built and ridden. */
export function told(trial) {
  const { feature, how } = state.story.jumps[trial.lip];
  const name = names(state.good)[feature];
  if (trial.flag == null) return [`${name}: ${howShort[how]}. ${words.unfit}`];
  const said = [words.flag(name, speed(trial.flag))];
  const tolerance = state.study.tolerances?.find((t) => t.lip === trial.lip);
  if (tolerance?.limits.length) said.push(words.measure(tightest(tolerance)));
  if (trial.first_gap != null) said.push(words.first(rough(trial.first_gap, Math.floor), howShort[trial.how_first]));
  if (trial.lip > 0) {
    const alone = trial.alone == null ? "–" : speed(trial.alone);
    said.push(trial.how_alone === "clean" ? words.alone(alone) : words.notAlone(alone, howShort[trial.how_alone]));
  }
  return said;
}

/** The whole day, as far as it is studied; `sentences` are those on one jump. */
export function order({ trials, stops: { headwind, tailwind, damp } }, sentences = told) {
  const { ending, jumps } = state.story;
  const { missing } = state.study;
  const wet = damp.some((how, i) => how !== "clean" && jumps[i].how === "clean");
  const rolls = ending.how === "leaves" ? [words.noStop(speed(ending.speed), missing && rough(missing, Math.ceil))] : [];
  const each = trials.map((trial) => make("li", {}, ...sentences(trial).map((text) => make("p", {}, text))));
  return [
    ...rolls.map((text) => make("p", { className: "caution" }, text)),
    make("p", {}, words.intro),
    make("ol", {}, ...each),
    make("p", {}, words.wind(headwind && wind(headwind), tailwind && wind(tailwind))),
    make("p", { className: "caution" }, [wet ? words.damp : "", words.soft].filter(Boolean).join(" ")),
  ];
}
