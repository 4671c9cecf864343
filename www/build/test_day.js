// The test day: what to look at first, who stands where, what to see at each flag, and room for what happened.

import { state } from "../state.js";
import { apart, rough } from "../units.js";
import { pointed } from "../numbers.js";
import { names } from "../names.js";
import { howShort, kinds, seen, testDay } from "../words.js";
import { make } from "../parts/make.js";
import { tightest } from "../parts/window.js";
import { caution, leaf, list, part, table, text } from "./leaf.js";
import { length, speed } from "./quantities.js";
import { work } from "./work.js";
import { common, day as words, titles } from "./words.js";

// So many rides are written down on a sheet.
const RIDES = 6;
const STANDS = 3;

const wind = (value) => {
  const [figure, unit] = apart(value, "speed");
  return value && `${Math.floor(parseFloat(pointed(figure)))} ${unit}`;
};

/** What is said of one jump, in the order in which it is built and ridden. */
function trial({ lip, flag, first_gap: gap, how_first: first, alone, how_alone: how }, called) {
  const row = work.planned[lip];
  const name = called[row.feature];
  if (flag == null) return make("li", {}, `${name}: ${howShort[row.how]}. ${testDay.unfit}`);
  const tolerance = work.study.tolerances?.find((one) => one.lip === lip);
  const said = [testDay.flag(name, speed(flag))];
  if (row.how !== "clean") said.push(testDay.unfit);
  if (tolerance?.limits.length) said.push(testDay.measure(tightest(tolerance)));
  if (gap != null) said.push(testDay.first(rough(gap, Math.floor), howShort[first]));
  if (lip > 0) {
    const at = alone == null ? "–" : speed(alone);
    said.push(how === "clean" ? testDay.alone(at) : testDay.notAlone(at, howShort[how]));
  }
  return make("li", {}, ...said.map((sentence) => make("p", {}, sentence)));
}

function order() {
  const found = work.study.test_day;
  if (found === undefined) return [text(common.coming)];
  if (!found) return [text(state.good.line.features ? common.lost : words.surveyed)];
  if (!found.trials.length) return [text(words.noJumps)];
  const { headwind, tailwind, damp } = found.stops;
  const called = names(state.good);
  const wet = damp.some((how, i) => how !== "clean" && work.planned[i].how === "clean");
  const { ending } = state.story;
  const { missing } = work.study;
  const rolls = ending.how === "leaves" ? testDay.noStop(speed(ending.speed), missing && rough(missing, Math.ceil)) : "";
  return [
    caution(rolls),
    text(testDay.intro),
    make("ol", {}, ...found.trials.map((one) => trial(one, called))),
    text(testDay.wind(wind(headwind), wind(tailwind))),
    caution([wet ? testDay.damp : "", testDay.soft].filter(Boolean).join(" ")),
  ];
}

/** Writes it where it stands, once it is found. */
export const tellOrder = () => document.querySelector('[data-part="test-day"]').replaceChildren(...order().filter(Boolean));

/** Boxes to tick. */
const ticks = (sentences) => list(sentences, "ticks");

/** Rows to write in: what is known already stands there. */
function room(headings, known, count) {
  const rows = Array.from({ length: Math.max(count, known.length) }, (_, i) => headings.map((_, k) => known[i]?.[k] ?? ""));
  return table(headings, rows, { className: "room" });
}

/** What is asked for after a test ride, to be written down where it is seen. */
function happened() {
  const { features } = state.story;
  const called = names(state.good);
  const jumps = work.planned.map((row, i) => called[row.feature] ?? `${kinds.jump} ${i + 1}`);
  const first = features[0]?.to ?? 0;
  // A flag at the foot of the ramp, and one where each jump begins.
  const flags = work.planned.map((row) => features[row.feature]?.from).filter((at) => at > first);
  const { fields } = seen;
  return [
    text(words.writeHow),
    make("h4", {}, seen.kinds.time),
    room([fields.from, fields.to, fields.seconds, words.rider, words.note], flags.map((at) => [length(first), length(at)]), RIDES),
    make("h4", {}, seen.kinds.speed),
    room([fields.at, fields.speed, words.rider, words.note], flags.map((at) => [length(at)]), RIDES),
    jumps.length > 0 && make("h4", {}, seen.kinds.landed),
    jumps.length > 0 && room([fields.jump, fields.past_knuckle, words.rider, words.note], jumps.map((name) => [name]), RIDES),
    jumps.length > 0 && text(words.minus),
    make("h4", {}, seen.kinds.stopped),
    room([fields.stopped, words.rider, words.note], [], STANDS),
    text(words.rolled),
  ];
}

/** The sheet. */
export const testDaySheet = () =>
  leaf(
    "day",
    titles.day,
    caution(words.adult),
    part(words.before, ticks(words.inspect)),
    part(words.gear, ticks(words.wear)),
    part(words.people, ticks(words.stand)),
    part(words.order, make("div", { data: { part: "test-day" } }, ...order().filter(Boolean))),
    make("div", { className: "apart" }, part(words.happened, ...happened())),
  );
