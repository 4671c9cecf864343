// Wooden lips: a sheet for those that are alike.

import { save } from "../parts/file.js";
import { make } from "../parts/make.js";
import { list as joined } from "../numbers.js";
import { button, buttons, cautions, facts, leaf, list, part, table, text } from "./leaf.js";
import { pieceRows, cuttingPlan } from "./pieces.js";
import { angle, length, mass, sawn, size as broad, thick } from "./quantities.js";
import { drawn, figure, letters, sheet as page } from "./sketch.js";
import { work } from "./work.js";
import { common, lips as words, pieces, titles } from "./words.js";

// Shallower than this an arc turns by a rounding error, and ground is level, rad.
const STRAIGHT = 1e-3;

// Less than this nobody digs off or fills under a lip, m.
const EVEN = 0.005;

// Sheets whose pages in full size are wanted.
const tiled = new Set();

/** Where a string is held, from one of the lip's ends. */
function held({ string, wood }, i, all) {
  if (!string) return null;
  const { radius, centre, centre_from_edge: back } = string;
  const which = all.filter((one) => one.string).length > 1 ? words.which(wood) : words.only;
  return [which, words.string(sawn(radius), sawn(centre.level), sawn(centre.plumb), sawn(-back.level), sawn(back.plumb))];
}

function uneven([over, under]) {
  const said = [];
  if (over > EVEN) said.push(words.digOff(sawn(over)));
  if (under > EVEN) said.push(words.fillUnder(sawn(under)));
  return said.join(" ");
}

function curve({ width, template }) {
  const { ground, exit, run, height, arc, wood, stretches, takeover, straight_from: straight, edge } = template;
  const last = stretches.at(-1);
  const slope = Math.abs(ground) < STRAIGHT ? words.level : words[ground > 0 ? "rises" : "falls"](angle(Math.abs(ground)));
  return [
    facts([
      [words.width, sawn(width)],
      [words.run, sawn(run)],
      [words.height, sawn(height)],
      [words.exit, angle(exit)],
      [words.arc, wood < arc - EVEN ? words.ofWood(sawn(arc), sawn(wood)) : sawn(arc)],
      [words.edgeAt, words.place(sawn(edge.along), sawn(edge.rise))],
      ...stretches.map(held),
      [words.ground, slope],
      straight && [words.straight, words.straightFrom(sawn(last.length), sawn(straight.along), sawn(straight.rise))],
      takeover.at.along > EVEN && [words.takeover, words.takeoverAt(sawn(takeover.at.along), sawn(takeover.at.rise), angle(takeover.heading))],
    ]),
    text(takeover.at.along > EVEN ? words.takeoverHow : words.footHow),
    text(uneven(template.uneven)),
  ];
}

const station = ({ at, panel, heading }, i) => [String(i + 1), sawn(at.along), sawn(at.rise), panel > 0 ? sawn(panel) : "–", angle(heading)];

/** What is ridden on. */
function deck({ deck: { kind, ...deck } }) {
  if (kind === "boards") {
    const { count, ripped, hollow } = deck;
    return [text(words.boards(count, ripped && sawn(ripped), sawn(hollow)))];
  }
  const { bend, grid, size } = deck;
  return [text(words.skin(thick(bend.thickness), bend.layers, words.grains[bend.grain], grid[0] * grid[1], broad(size)))];
}

const bend = ({ least, fits }) => (fits ? words.bends : words.breaks)(length(least));

/** Each thickness, its grain along the ride and across it. */
function bends({ bends: all }) {
  const thicknesses = [...new Set(all.map(({ thickness }) => thickness))];
  const row = (thickness) => {
    const [along, across] = ["along", "across"].map((grain) => all.find((one) => one.thickness === thickness && one.grain === grain));
    return [thick(thickness), along ? bend(along) : "–", across ? bend(across) : "–", String((along ?? across).layers)];
  };
  return table([words.plywood, words.alongBends, words.acrossBends, `#${words.layers}`], thicknesses.map(row));
}

/** The letters of a panel's parts, and of the skin after them. */
function panelLetters(parts, skin) {
  const named = Array.from({ length: parts }, (_, i) => (parts > 1 ? words.panelPart(i + 1) : words.panel));
  return letters(skin ? [...named, words.skinPart] : named);
}

function panels({ lip_box: box, deck, count }, i) {
  if (!box) return [text(words.noBox)];
  const { panels: { string, each, parts, joints, layout } } = box;
  const sheets = layout.sheets.length;
  return [
    text(words.panels(each, each * count, string && sawn(string))),
    parts.length > 1 && text(words.joints(parts.length, joined(joints.map(sawn)))),
    text(words.sheets(sheets, broad(layout.sheet), sheets === layout.least)),
    figure({ kind: "panels", sheet: i }, words.panelsDrawn, panelLetters(parts.length, deck.kind === "skin")),
  ];
}

function stand({ lip_box: box }) {
  if (!box) return [];
  const { frame } = box;
  const rows = frame.legs.map(({ along, height, count }) => [words.legs, String(count), sawn(height), words.along(sawn(along))]);
  if (frame.braces) rows.push([words.braces, String(frame.braces), sawn(frame.brace), words.across]);
  return [
    table([words.what, `#${pieces.count}`, `#${pieces.length}`, words.where], [
      [words.ribs, String(frame.ribs * (frame.panels - 1)), sawn(frame.bay), words.atStations],
      [words.ties, String(frame.ties * (frame.panels - 1)), sawn(frame.bay), words.onGround],
      ...rows,
    ]),
    list(words.anchor),
  ];
}

function weighs({ weight: { dry, soaked, two, three, movers } }) {
  return [text(words.weight(mass(dry), mass(soaked))), text(words.movers[movers](mass(two), mass(three)))];
}

/** A switch for the template in full size, and a way to keep its curve. */
function template(lip, i, renew) {
  const { pages } = lip.lip_box.panels.tiling;
  const id = `tiles-${i}`;
  const box = make("input", { type: "checkbox", id, checked: tiled.has(i) });
  box.addEventListener("change", () => {
    tiled[box.checked ? "add" : "delete"](i);
    renew();
  });
  const kept = button(words.saveCurve, () => save(drawn({ kind: "curve", sheet: i }), "image/svg+xml", words.curveFile(i + 1)), `curve-${i}`);
  return make("div", { className: "template" }, make("p", { className: "switch" }, box, make("label", { htmlFor: id }, words.fullSize(pages.length))), buttons(kept));
}

/** The pages in full size, where they are wanted: each fills its paper. */
function tiles(lip, i) {
  const { paper, pages } = lip.lip_box.panels.tiling;
  const [wide, high] = paper.size;
  const kind = `${Math.round(1000 * Math.min(wide, high)) === 210 ? "a4" : "letter"}-${wide > high ? "wide" : "tall"}`;
  const one = (_, k) => make("div", { className: `tile ${kind}` }, page({ kind: "tile", sheet: i, page: k }, words.tile(k + 1, pages.length)));
  return make("section", { className: "tiles" }, make("p", {}, words.tilesHow), ...pages.map(one));
}

function lipSheet(lip, i, renew) {
  const called = joined(lip.features.map((feature) => work.names[feature]));
  const id = `lip-${i}`;
  const made = leaf(
    id,
    titles.lip(called),
    text(words.build(lip.count, called)),
    figure({ kind: "lip", sheet: i }, words.drawn, { ...letters(words.legend), R: words.stringRidden, r: words.stringPanel }),
    part(words.curve, ...curve(lip)),
    part(words.stations, text(words.stationsHow), table([`#${words.number}`, `#${words.alongGround}`, `#${words.rise}`, `#${words.panelHigh}`, `#${words.slope}`], lip.template.stations.map(station))),
    lip.lip_box && template(lip, i, renew),
    part(words.deck, ...deck(lip), bends(lip), lip.bends.length > 0 && text(words.bendsFrom)),
    part(words.panelsTitle, ...panels(lip, i)),
    part(words.frame, ...stand(lip)),
    part(common.cutList, pieceRows(lip.pieces, lip.sheets), text(lip.count > 1 ? words.forAll(lip.count) : "")),
    part(common.cuttingPlan, cuttingPlan(lip.cutting), lip.cutting.length && figure({ kind: "cutting", sheet: i }, common.cuttingDrawn, common.cuttingLegend)),
    part(words.weightTitle, ...weighs(lip)),
    cautions([...lip.cautions.map((one) => words.cautions[one]), ...words.always]),
  );
  if (lip.lip_box && tiled.has(i)) made.after = tiles(lip, i);
  return made;
}

/** A sheet for each sort of lip. */
export const lips = (renew) => work.job.lips.map((lip, i) => lipSheet(lip, i, renew));
