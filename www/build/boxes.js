// Boxed landings: walls of timber that hold the dirt.

import { cautions, facts, leaf, list, part, table, text } from "./leaf.js";
import { pieceRows } from "./pieces.js";
import { figure as pure, force, length, percent, sawn } from "./quantities.js";
import { figure, letters } from "./sketch.js";
import { work } from "./work.js";
import { boxes as words, common, pieces, titles } from "./words.js";

const post = (where) => (one, i) => [
  `${where} ${i + 1}`,
  sawn(one.at),
  sawn(one.height),
  sawn(one.depth),
  one.tie ? sawn(one.tie.height) : "–",
  percent(one.bending),
];

function posts({ front, side }) {
  const rows = [...front.posts.map(post(words.front)), ...side.posts.map(post(words.side))];
  return [
    text(words.postsHow),
    table([words.post, `#${words.at}`, `#${words.over}`, `#${words.sunk}`, `#${words.tied}`, `#${words.use}`], rows),
    text(words.sheeting(percent(Math.max(front.sheeting, side.sheeting)))),
  ];
}

function held({ anchors, pushes, front }) {
  if (!anchors) {
    const rows = pushes.map(({ wetness, thrust }) => [words.wetness[wetness], force(thrust * front.length)]);
    return [text(words.noAnchors), table([words.fill, `#${words.push}`], rows)];
  }
  const check = ({ wetness, thrust, pull, resistance, factor }) => [words.wetness[wetness], force(thrust), force(pull), force(resistance), words.times(pure(factor))];
  return [
    facts([
      [words.anchorTies, words.anchorTie(anchors.ties, sawn(anchors.tie_length), sawn(anchors.tie_height))],
      [words.deadmen, words.deadman(anchors.courses, sawn(anchors.length))],
      [words.distance, sawn(anchors.distance)],
      [words.depth, words.dug(sawn(anchors.depth), sawn(anchors.dug))],
      [words.hold, sawn(anchors.hold)],
    ]),
    table([words.fill, `#${words.push}`, `#${words.pull}`, `#${words.resists}`, `#${words.factor}`], anchors.checks.map(check)),
    text(anchors.holds ? words.holds : words.holdsNot),
  ];
}

/** What has to be said beside a box, written out. */
function said(one) {
  const say = words.cautions[one.kind];
  switch (one.kind) {
    case "review":
      return words.review[one.rule](length(one.height), length(one.over));
    case "overloaded":
      return say(words.parts[one.part]);
    case "deep_hole":
      return say(length(one.depth));
    case "floods":
      return say(pure(one.factor));
    case "edge":
      return say(length(one.height));
    default:
      return say;
  }
}

function boxSheet(box, i) {
  const reviews = box.cautions.filter(({ kind }) => kind === "review");
  return leaf(
    `box-${i}`,
    titles.box(work.names[box.feature]),
    // Who has to be asked comes first: it decides whether anything is built.
    list(reviews.map(said), "review"),
    figure({ kind: "box", sheet: i }, words.drawn, letters(words.legend)),
    part(
      common.measures,
      facts([
        [words.inside, sawn(box.width)],
        [words.height, sawn(box.height)],
        [words.long, sawn(box.length)],
        [words.spacing, words.spaced(sawn(box.front.spacing), sawn(box.side.spacing))],
        [words.crossTie, sawn(box.cross_tie)],
        [words.corners, words.corner(box.corner_ties)],
        [words.rod, percent(box.rod)],
      ]),
    ),
    part(words.posts, ...posts(box)),
    part(words.anchors, ...held(box)),
    part(common.cutList, pieceRows(box.pieces), text(pieces.sunk)),
    cautions(box.cautions.filter(({ kind }) => kind !== "review").map(said)),
  );
}

/** A sheet for each boxed landing. */
export const boxes = () => work.job.boxes.map(boxSheet);
