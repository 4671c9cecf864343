// The test day: what to look at first, who stands where, what to see at each flag, and room for what happened.

import { state } from "../state.js";
import { jumpNames } from "../names.js";
import { seen, testDay } from "../words.js";
import { make } from "../parts/make.js";
import { order, told } from "../parts/trials.js";
import { caution, leaf, list, part, table, text } from "./leaf.js";
import { length } from "./quantities.js";
import { common, day as words, titles } from "./words.js";

// So many rides are written down on a sheet.
const RIDES = 6;
const STANDS = 3;

/** What is said of one jump: one that is not clean on paper is not ridden, whatever its flag says. */
function sentences(trial) {
  const said = told(trial);
  const unfit = trial.flag != null && state.story.jumps[trial.lip].how !== "clean";
  return unfit ? [said[0], testDay.unfit, ...said.slice(1)] : said;
}

function theOrder() {
  const found = state.study.test_day;
  if (found === undefined) return [text(common.coming)];
  if (!found) return [text(state.good.line.features ? common.lost : words.surveyed)];
  return found.trials.length ? order(found, sentences) : [text(words.noJumps)];
}

/** Writes it where it stands, once it is found. */
export const tellOrder = () => document.querySelector('[data-part="test-day"]').replaceChildren(...theOrder());

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
  const jumps = state.story.jumps.map(jumpNames(state.good));
  const first = features[0]?.to ?? 0;
  // A flag at the foot of the ramp, and one where each jump begins.
  const flags = state.story.jumps.map((row) => features[row.feature]?.from).filter((at) => at > first);
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
    part(words.order, make("div", { data: { part: "test-day" } }, ...theOrder())),
    make("div", { className: "apart" }, part(words.happened, ...happened())),
  );
