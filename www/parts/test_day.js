// The test day: what to ride first, what to see at each flag, when to stop.

import { state, onChange } from "../state.js";
import { apart, rough, shown } from "../units.js";
import { pointed } from "../numbers.js";
import { names } from "../names.js";
import { testDay as words, howShort } from "../words.js";
import { make } from "./make.js";
import { explain } from "./terms.js";
import { tightest } from "./window.js";

const section = document.getElementById("test-day");
const speed = (value) => shown(value, "speed");
// Nobody feels a wind finer than this: whole units, and rather less than more.
const wind = (value) => {
  const [figure, unit] = apart(value, "speed");
  return `${Math.floor(parseFloat(pointed(figure)))} ${unit}`;
};

function step(trial, called) {
  const name = called[state.story.jumps[trial.lip].feature];
  const item = make("li");
  const say = (text) => item.append(make("p", {}, text));
  if (trial.flag == null) {
    say(`${name}: ${howShort[state.story.jumps[trial.lip].how]}. ${words.unfit}`);
    return item;
  }
  say(words.flag(name, speed(trial.flag)));
  const tolerance = state.study.tolerances?.find((t) => t.lip === trial.lip);
  if (tolerance?.limits.length) say(words.measure(tightest(tolerance)));
  if (trial.first_gap != null) say(words.first(rough(trial.first_gap, Math.floor), howShort[trial.how_first]));
  if (trial.lip > 0) {
    const alone = trial.alone == null ? "–" : speed(trial.alone);
    say(trial.how_alone === "clean" ? words.alone(alone) : words.notAlone(alone, howShort[trial.how_alone]));
  }
  return item;
}

function show() {
  const day = state.study.test_day;
  section.hidden = !day || !day.trials.length;
  if (section.hidden) return;
  const called = names(state.good);
  const { headwind, tailwind, damp } = day.stops;
  const wet = damp.some((how, i) => how !== "clean" && state.story.jumps[i].how === "clean");
  const { ending } = state.story;
  const { missing } = state.study;
  const rolls = ending.how === "leaves" ? [words.noStop(speed(ending.speed), missing && rough(missing, Math.ceil))] : [];
  section.lastElementChild.replaceChildren(
    ...rolls.map((text) => make("p", { className: "caution" }, text)),
    make("p", {}, words.intro),
    make("ol", {}, ...day.trials.map((trial) => step(trial, called))),
    make("p", {}, words.wind(headwind && wind(headwind), tailwind && wind(tailwind))),
    make("p", { className: "caution" }, [wet ? words.damp : "", words.soft].filter(Boolean).join(" ")),
  );
  explain(section.lastElementChild);
}

export function startTestDay() {
  onChange((what) => {
    if (state.story && ["plan", "structure", "study"].includes(what)) show();
  });
}
