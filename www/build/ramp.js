// The start ramp, where it is of wood.

import { beside, cautions, facts, leaf, list, part, table, text } from "./leaf.js";
import { pieceRows } from "./pieces.js";
import { angle, force, length, percent, sawn } from "./quantities.js";
import { figure, letters } from "./sketch.js";
import { work } from "./work.js";
import { common, ramp as words, titles } from "./words.js";

function shape({ shape: s, deck_boards: boards }) {
  const arc = ([radius, along]) => (along > 0 ? words.arc(sawn(radius), sawn(along)) : "");
  return facts([
    [words.width, sawn(s.width)],
    [words.height, sawn(s.height)],
    [words.run, sawn(s.run)],
    [words.platform, sawn(s.platform)],
    [words.edge, arc(s.edge)],
    [words.slope, words.sloped(angle(s.slope), sawn(s.slope_length))],
    [words.hollow, arc(s.hollow)],
    [words.deck, words.boards(boards, sawn(s.deck_length))],
  ]);
}

const row = (one, i) => [
  String(i + 1),
  sawn(one.at),
  words.posts(one.posts, sawn(one.post)),
  sawn(one.footing),
  one.braced ? words.yes : words.no,
  force(one.load),
  percent(Math.max(one.post_use, one.bearer_use)),
];

const stretch = ({ from, to, length: long, sagitta }, i) => [String(i + 1), `${sawn(from)} – ${sawn(to)}`, sawn(long), sagitta > 0 ? sawn(sagitta) : words.straight];

function frame({ frame: f }) {
  return [
    text(words.joists(f.joists, sawn(f.spacing), length(f.may_span))),
    table([words.row, `#${words.at}`, `#${words.post}`, `#${words.footing}`, words.braced, `#${words.load}`, `#${words.use}`], f.rows.map(row)),
    table([words.joist, `#${words.fromTo}`, `#${words.long}`, `#${words.bow}`], f.stretches.map(stretch)),
    text(words.bowed),
  ];
}

function rails({ rails: r }) {
  if (!r) return text(words.noRails);
  return facts([
    [words.railHigh, sawn(r.height)],
    [words.railTo, sawn(r.to)],
    [words.closedTo, r.closed_to > 0 && sawn(r.closed_to)],
    [words.back, r.back > 0 && sawn(r.back)],
    [words.gap, r.closed_to > 0 && sawn(r.gap)],
    [words.railPosts, String(r.posts)],
    [words.balusters, r.balusters > 0 && String(r.balusters)],
    [words.railBending, percent(r.bending)],
  ]);
}

const stair = ({ stair: s }) =>
  s &&
  facts([
    [words.stairWidth, sawn(s.width)],
    [words.risers, words.rises(s.risers, sawn(s.rise))],
    [words.going, sawn(s.going)],
    [words.stringers, words.each(s.stringers, sawn(s.length))],
  ]);

function said(one) {
  const say = words.cautions[one.kind];
  if (one.kind === "review") return words.review[one.rule](length(one.height), length(one.over));
  if (one.kind === "overloaded") return say(words.parts[one.part]);
  return one.kind === "fall" ? say(length(one.height)) : say;
}

/** The sheet, where there is one. */
export function ramp() {
  const { ramp: sheet } = work.job;
  if (!sheet) return null;
  const is = (kind) => (one) => (one.kind === "review") === kind;
  return leaf(
    "ramp",
    titles.ramp,
    list(sheet.cautions.filter(is(true)).map(said), "review"),
    figure({ kind: "ramp" }, words.drawn, letters(words.legend)),
    part(common.measures, shape(sheet)),
    part(words.surface, text(words.marksHow), beside([`#${words.from}`, `#${words.high}`], sheet.shape.marks.map(([at, high]) => [sawn(at), sawn(high)]))),
    part(words.frame, ...frame(sheet)),
    part(words.rails, rails(sheet)),
    part(words.stair, stair(sheet)),
    part(common.cutList, pieceRows(sheet.pieces)),
    cautions(sheet.cautions.filter(is(false)).map(said)),
  );
}
