// The dirt: how much each feature takes and gives, where it comes from, what boards save.

import { saveRows } from "../parts/file.js";
import { list as joined } from "../numbers.js";
import { state } from "../state.js";
import { make } from "../parts/make.js";
import { button, buttons, caution, facts, leaf, part, table, text } from "./leaf.js";
import { bare, figure as pure, headed, length, percent, signed, volume } from "./quantities.js";
import { figure, letters } from "./sketch.js";
import { work } from "./work.js";
import { common, dirt as words, titles } from "./words.js";

// So little is not worth a row, m³.
const NOTHING = 1e-4;

const moved = () => work.job.dirt.features.filter(({ heap }) => heap.fill > NOTHING || heap.cut > NOTHING);
const some = (value) => (value > NOTHING ? volume(value) : "–");

function row({ heap, fill, cut, loads }) {
  return [work.names[heap.feature] ?? "", heap.tallest > 0 ? length(heap.tallest) : "–", length(heap.foot), some(fill.packed), some(fill.bank), some(fill.loose), some(cut.bank), String(loads.barrows)];
}

function save() {
  const volumes = [["packed", "fill", "packed"], ["bank", "fill", "bank"], ["loose", "fill", "loose"], ["cut", "cut", "bank"]];
  const headings = [words.feature, headed(words.tallest, "length"), headed(words.foot, "length"), ...volumes.map(([word]) => headed(words[word], "volume")), words.barrows, words.buckets, words.trucks];
  const rows = moved().map((one) => [
    work.names[one.heap.feature] ?? "",
    bare(one.heap.tallest, "length"),
    bare(one.heap.foot, "length"),
    ...volumes.map(([, state, of]) => bare(one[state][of], "volume")),
    one.loads.barrows,
    one.loads.buckets,
    one.loads.trucks,
  ]);
  saveRows([headings, ...rows, [common.worked]], words.file);
}

function sums({ fill, cut, missing, spare, loads, hours, earth }) {
  const three = ({ bank, loose, packed }) => words.three(volume(packed), volume(bank), volume(loose));
  return [
    facts([
      [words.fill, three(fill)],
      [words.dug, cut.bank > NOTHING && three(cut)],
      [words.missing, missing.bank > NOTHING ? three(missing) : words.none],
      [words.loads, missing.bank > NOTHING && words.carried(loads.barrows, loads.buckets, loads.trucks)],
      [words.spare, spare.bank > NOTHING && three(spare)],
      [words.hours, words.byHand(pure(hours))],
      [words.soil, words.earth(pure(earth.slope), percent(earth.swell), percent(earth.shrinkage))],
    ]),
    text(words.states),
    text(words.hoursFrom),
  ];
}

/** A place by its feature, or by where it lies beside the line. */
function place({ x, y, feature }) {
  if (feature != null) return work.names[feature] ?? "";
  return words.borrow(length(x), length(Math.abs(y)), y >= 0);
}

const way = ({ from, to, earth, distance, loads }) => [place(from), place(to), volume(earth.loose), length(distance), String(loads.barrows)];

/** What boards save at a landing, both ways drawn. */
function boxed({ feature, walls, mound, saved }, i) {
  const { landing } = state.good.line.features[feature];
  return part(
    words.saves(work.names[feature]),
    text(words.saved(volume(mound.fill), length(mound.foot), volume(walls.fill), length(walls.foot), volume(saved), landing.boxed)),
    figure({ kind: "mounds", index: i }, words.mounds, letters(words.moundsLegend)),
  );
}

const low = ({ of, station, level, over_yard: over, stands, next }) => [
  length(station),
  words.of[of],
  level > 0 ? length(level) : "–",
  signed(over),
  stands > 0.005 ? length(stands) : words.dry,
  next ? words.next(length(next[0]), length(next[1])) : words.noNext,
];

const crowded = () => moved().filter(({ heap }) => heap.crowded).map(({ heap }) => work.names[heap.feature]);

/** The sheet. */
export function dirt() {
  const { dirt: all, lows } = work.job;
  const narrow = crowded();
  return leaf(
    "dirt",
    titles.dirt,
    caution(common.services),
    caution(words.steep),
    part(
      words.byFeature,
      table([words.feature, `#${words.tallest}`, `#${words.foot}`, `#${words.packed}`, `#${words.bank}`, `#${words.loose}`, `#${words.cut}`, `#${words.barrows}`], moved().map(row)) ?? text(words.noDirt),
      narrow.length ? text(words.crowded(joined(narrow))) : null,
      buttons(button(words.save, save)),
    ),
    part(words.all, ...sums(all)),
    part(words.where, all.ways.length ? text(words.haul) : null, table([words.from, words.to, `#${words.loose}`, `#${words.far}`, `#${words.barrows}`], all.ways.map(way)) ?? text(words.noWays)),
    all.boxed.length > 0 && make("section", { className: "saves" }, ...all.boxed.map(boxed)),
    part(words.water, text(words.waterHow), table([`#${words.station}`, words.on, `#${words.levelFor}`, `#${words.overYard}`, `#${words.stands}`, words.drain], lows.map(low)) ?? text(words.noLows)),
  );
}
