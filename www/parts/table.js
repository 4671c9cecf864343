// The jumps of every rider as a table for a spreadsheet, in the reader's units.

import { state } from "../state.js";
import { plain } from "../units.js";
import { names } from "../names.js";
import { howShort, table as words } from "../words.js";

// Places after the point: finer than anybody builds or measures.
const PLACES = 2;

const round = (value) => Number(Number(value).toFixed(PLACES));
const quantity = (value, of) => (value == null ? null : round(plain(value, of)[0]));
const degrees = (rad) => (rad == null ? null : round((rad * 180) / Math.PI));

const heading = (word, of) => words.heading(word, plain(0, of)[1]);

function headings() {
  const speeds = ["speed", "slowest", "fastest", "worksFrom", "worksTo"];
  const lengths = ["rear", "front", "drop"];
  return [
    words.rider,
    words.jump,
    ...speeds.map((what) => heading(words[what], "speed")),
    words.exit,
    words.airtime,
    ...lengths.map((what) => heading(words[what], "length")),
    words.how,
  ];
}

/** A jump as somebody rides it; what is studied is known of the first rider alone. */
function row(rider, name, jump, spread, window) {
  const speeds = [jump.speed, spread?.slowest, spread?.fastest, window?.slowest, window?.fastest];
  const lengths = [jump.rear_past_knuckle, jump.front_past_knuckle, jump.fall_height];
  return [
    rider,
    name,
    ...speeds.map((v) => quantity(v, "speed")),
    degrees(jump.exit_angle),
    jump.airtime == null ? null : round(jump.airtime),
    ...lengths.map((v) => quantity(v, "length")),
    howShort[jump.how],
  ];
}

/** The rows, the first of them headings. */
export function rows() {
  const { story, study, good } = state;
  const called = names(good);
  const name = (jump) => called[jump.feature] ?? "";
  const own = story.jumps.map((jump) => row(good.riders[0].label, name(jump), jump, study.spreads?.[jump.lip], study.windows?.[jump.lip]));
  const others = story.others.flatMap(({ label, jumps }) => jumps.map((jump) => row(label, name(jump), jump)));
  return [headings(), ...own, ...others, [words.caution]];
}
