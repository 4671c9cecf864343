// One list of all that is bought, and what it costs.

import { saveRows } from "../parts/file.js";
import { button, buttons, leaf, list, part, table, text } from "./leaf.js";
import { named } from "./pieces.js";
import { priceFields } from "./prices.js";
import { bare, figure as pure, headed, length, loose, money, sawn, section, thick, volume } from "./quantities.js";
import { work } from "./work.js";
import { common, materials as words, pieces, titles } from "./words.js";

/** What a line of the list is called. */
export const sort = ({ grade, section: both }) => (grade === "sheet" ? pieces.plywood(thick(both[0])) : `${words.grades[grade]} ${section(both)}`);

const cost = (value) => (value == null ? "–" : money(value));

/** How much is bought: sheets are counted. */
function bought({ grade, buy }) {
  const [long] = work.supplies.sheet;
  return grade === "sheet" ? words.sheets(Math.ceil(buy / long - 1e-6)) : length(buy);
}

const row = (line) => [
  sort(line),
  String(line.pieces),
  sawn(line.longest),
  length(line.length),
  line.at_hand > 0 ? length(line.at_hand) : "–",
  bought(line),
  volume(line.volume),
  pure(line.board_feet, 0),
  cost(line.cost),
];

function rows() {
  const { bill } = work.job;
  const wood = bill.lines.map(row);
  if (bill.earth > 0) wood.push([words.earth, "", "", "", "", volume(bill.earth), volume(bill.earth), "", cost(bill.earth_cost)]);
  return wood;
}

function save() {
  const { bill, rods } = work.job;
  const headings = [words.what, words.pieces, headed(words.longest, "sawn"), ...["needed", "atHand", "buy"].map((word) => headed(words[word], "length")), headed(words.volume, "volume"), words.boardFeet, words.cost];
  const line = (one) => [loose(sort(one)), one.pieces, bare(one.longest, "sawn"), ...[one.length, one.at_hand, one.buy].map((v) => bare(v, "length")), bare(one.volume, "volume"), Number(one.board_feet.toFixed(1)), one.cost && Number(one.cost.toFixed(2))];
  const rod = (one) => [loose(pieces.rod(thick(one.diameter))), one.count, bare(one.length, "sawn"), bare(one.count * one.length, "length")];
  const earth = bill.earth > 0 ? [[words.earth, "", "", "", "", "", bare(bill.earth, "volume"), "", bill.earth_cost && Number(bill.earth_cost.toFixed(2))]] : [];
  saveRows([headings, ...bill.lines.map(line), ...rods.map(rod), ...earth, [common.worked]], words.file);
}

/** Every piece of the whole line, by the sheet that it belongs to. */
function saveCuts() {
  const { job } = work;
  const headings = [words.sheet, words.what, headed(words.thickness, "sawn"), headed(words.width, "sawn"), headed(pieces.length, "sawn"), pieces.count];
  const row = (title) => (piece) => [title, named(piece), ...piece.section.map((v) => bare(v, "sawn")), bare(piece.length, "sawn"), piece.count];
  const panel = (title) => ({ thickness, size: [long, wide], ...piece }) => [title, named(piece), bare(thickness, "sawn"), bare(wide, "sawn"), bare(long, "sawn"), piece.count];
  const lip = (one) => {
    const title = titles.lip(one.features.map((feature) => work.names[feature]).join(", "));
    return [...one.pieces.map(row(title)), ...one.sheets.map(panel(title))];
  };
  const all = [...job.lips.flatMap(lip), ...job.boxes.flatMap((box) => box.pieces.map(row(titles.box(work.names[box.feature])))), ...(job.ramp?.pieces.map(row(titles.ramp)) ?? [])];
  saveRows([headings, ...all, [common.worked]], words.cutFile);
}

const own = ({ section: both, sawn: gives }) => [section(both), length(gives.boards), volume(gives.volume), pure(gives.board_feet, 0)];

/** Rods of one length together. */
function alike(rods) {
  const found = new Map();
  for (const { diameter, length: long, count } of rods) {
    const row = [pieces.rod(thick(diameter)), sawn(long)];
    const key = row.join("|");
    found.set(key, [...row, (found.get(key)?.[2] ?? 0) + count]);
  }
  return [...found.values()].map(([rod, long, count]) => [rod, long, String(count)]);
}

/** The sheet. */
export function materials() {
  const { bill, rods, own: logs } = work.job;
  const unpriced = bill.unpriced > 0 ? words.unpriced(bill.unpriced) : "";
  const { waste } = work.supplies.buying;
  return leaf(
    "materials",
    titles.materials,
    table([words.what, `#${words.pieces}`, `#${words.longest}`, `#${words.needed}`, `#${words.atHand}`, `#${words.buy}`, `#${words.volume}`, `#${words.boardFeet}`, `#${words.cost}`], rows(), { className: "bill" }) ?? text(words.nothing),
    bill.cost > 0 && text([words.sum(money(bill.cost)), unpriced].filter(Boolean).join(" ")),
    list([words.waste(waste), words.lengths, words.board]),
    buttons(button(words.save, save), button(words.saveCuts, saveCuts)),
    priceFields(sort),
    part(words.rods, table([words.rod, `#${pieces.length}`, `#${pieces.count}`], alike(rods))),
    part(words.logs, table([pieces.section, `#${words.boards}`, `#${words.volume}`, `#${words.boardFeet}`], logs.map(own)), logs.length > 0 && text(words.logsHow(words.rules[work.supplies.log_rule]))),
    list(words.minding),
  );
}
