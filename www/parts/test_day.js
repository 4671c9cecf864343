// The test day: what to ride first, what to see at each flag, when to stop.

import { state, onChange } from "../state.js";
import { shown } from "../units.js";
import { names } from "../names.js";
import { testDay as words, howShort } from "../words.js";
import { make } from "./make.js";

const section = document.getElementById("test-day");
const speed = (value) => shown(value, "speed");

function step(trial, called) {
  const name = called[state.story.jumps[trial.lip].feature];
  const item = make("li");
  const say = (text) => item.append(make("p", {}, text));
  if (trial.flag == null) {
    say(`${name}: ${howShort[state.story.jumps[trial.lip].how]}. ${words.unfit}`);
    return item;
  }
  say(words.flag(name, speed(trial.flag)));
  if (trial.first_gap != null) say(words.first(shown(trial.first_gap, "length"), howShort[trial.how_first]));
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
  const rolls = ending.how === "leaves" ? [words.noStop(speed(ending.speed), missing && shown(missing, "length"))] : [];
  section.lastElementChild.replaceChildren(
    ...rolls.map((text) => make("p", { className: "caution" }, text)),
    make("p", {}, words.intro),
    make("ol", {}, ...day.trials.map((trial) => step(trial, called))),
    make("p", {}, words.wind(headwind && speed(headwind), tailwind && speed(tailwind))),
    make("p", { className: "caution" }, [wet ? words.damp : "", words.soft].filter(Boolean).join(" ")),
  );
}

export function startTestDay() {
  onChange((what) => {
    if (state.story && ["plan", "structure", "study"].includes(what)) show();
  });
}
