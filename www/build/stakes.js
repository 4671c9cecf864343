// The stake-out: where each stake is driven, what it marks, how high the ride is there.

import { saveRows } from "../parts/file.js";
import { dug } from "../parts/window.js";
import { jumpNames } from "../names.js";
import { state } from "../state.js";
import { make } from "../parts/make.js";
import { caution, button, buttons, leaf, list, part, table, text } from "./leaf.js";
import { angle, bare, headed, length, signed } from "./quantities.js";
import { figure } from "./sketch.js";
import { parts, work } from "./work.js";
import { common, stakes as words, titles } from "./words.js";

const named = ({ feature, mark }) => words.named(work.names[feature] ?? "", words.marks[mark]);

const row = (stake, i) => [
  String(i + 1),
  named(stake),
  length(stake.tape),
  length(stake.station),
  signed(stake.height),
  length(stake.edge),
  length(stake.toe),
];

function save() {
  const quantities = [["tape", "tape"], ["level", "station"], ["height", "height"], ["edge", "edge"], ["toe", "toe"], ["ground", "ground"]];
  const headings = [words.number, words.marked, ...quantities.map(([word]) => headed(words[word], "length"))];
  const rows = work.job.stakes.map((stake, i) => [i + 1, named(stake), ...quantities.map(([, of]) => bare(stake[of], "length"))]);
  saveRows([headings, ...rows, [common.worked]], words.file);
}

const turn = ({ turn, feature }, i) => {
  if (!turn) return null;
  const { radius, sweep, chord, rise } = turn;
  return words.turn(i + 1, work.names[feature], length(radius), angle(sweep), length(chord), length(rise));
};

/** How far each dimension may be off; it is found out by riding, and comes in later. */
function tolerances() {
  const { tolerances: found } = state.study;
  if (found === undefined) return text(common.coming);
  if (!found) return text(common.lost);
  if (!found.length) return text(words.noTolerance);
  const called = jumpNames(state.good);
  return list(found.map((one) => `${called(state.story.jumps[one.lip])}: ${dug(one)}`));
}

/** Writes them where they stand, once they are found. */
export const tellTolerances = () => document.querySelector('[data-part="tolerances"]').replaceChildren(tolerances());

/** The first sheet. */
export function stakeOut() {
  const { stakes } = work.job;
  const sections = parts().map(([from, to], i, all) => figure({ kind: "section", from, to }, words.section(i + 1, all.length, length(from), length(to))));
  const lines = state.good.line.features ? null : text(words.surveyed);
  return leaf(
    "stakes",
    titles.stakes,
    caution(common.services),
    lines,
    stakes.length && text(words.how),
    table([`#${words.number}`, words.marked, `#${words.tape}`, `#${words.level}`, `#${words.height}`, `#${words.edge}`, `#${words.toe}`], stakes.map(row), { className: "stakes" }),
    list(stakes.map(turn)),
    stakes.length && buttons(button(words.save, save)),
    part(words.long, text(words.sectionLegend), ...sections),
    part(words.off, make("div", { data: { part: "tolerances" } }, tolerances())),
  );
}
