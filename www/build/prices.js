// What the builder pays for each sort, and what lies around already.

import { state } from "../state.js";
import { parse, shown } from "../units.js";
import { spelt, pointed } from "../numbers.js";
import { make } from "../parts/make.js";
import { free } from "./fields.js";
import { work } from "./work.js";
import { materials as words } from "./words.js";

// Sections within this of each other are one, m: as in the list itself.
const SAME = 1e-4;

const alike = (a, b) => a.grade === b.grade && a.section?.every((v, i) => Math.abs(v - b.section[i]) < SAME);

/** What one price is for, by grade: how the builder asks for it, and how it is kept, times which share. */
function per(line) {
  // A quantity of one in the reader's own units.
  const one = (quantity) => parse("1", quantity);
  if (line.grade === "sheet") return { per: "square_metre", times: work.asked.sheet[0] * line.section[1], word: words.perSheet };
  return { per: "metre", times: one("length"), word: words.perLength[state.system] };
}

const money = (text) => {
  const value = Number(pointed(text.trim()));
  if (!Number.isFinite(value) || value < 0) throw words.noMoney;
  return value;
};

const written = (value) => spelt(String(Number(value.toFixed(2))));

/** The price of a line; an empty field takes it away. */
function price(line, name) {
  const { buying } = work.asked;
  const { per: kept, times, word } = per(line);
  const known = buying.prices.find((one) => alike(one, line) && one.per === kept);
  return free(words.price(name, word), known ? written(known.price * times) : "", (text) => {
    const rest = buying.prices.filter((one) => !alike(one, line));
    const next = text.trim() ? [{ grade: line.grade, section: line.section, per: kept, price: money(text) / times }] : [];
    buying.prices = [...rest, ...next];
  });
}

/** What lies around of a line. */
function lying(line, name) {
  const { buying } = work.asked;
  const known = buying.at_hand.find((one) => alike(one, line));
  return free(words.lying(name), known ? shown(known.length, "length") : "", (text) => {
    const rest = buying.at_hand.filter((one) => !alike(one, line));
    const next = text.trim() ? [{ grade: line.grade, section: line.section, length: parse(text, "length") }] : [];
    buying.at_hand = [...rest, ...next];
  });
}

function earth() {
  const { buying } = work.asked;
  const one = parse("1", "volume");
  const known = buying.earth_price;
  return free(words.earthPrice(words.perVolume[state.system]), known == null ? "" : written(known * one), (text) => {
    buying.earth_price = text.trim() ? money(text) / one : null;
  });
}

// Whether the fields are open: they are made anew after every change.
let open = false;

/** Fields for every line of the list; not on paper. */
export function priceFields(sort) {
  const { lines, earth: bought } = work.job.bill;
  if (!lines.length && !bought) return null;
  const fields = lines.map((line) => make("div", { className: "group" }, price(line, sort(line)), lying(line, sort(line))));
  const box = make("details", { className: "prices", id: "prices", open }, make("summary", {}, words.prices), make("p", {}, words.pricesHow), ...fields, ...(bought > 0 ? [earth()] : []));
  box.addEventListener("toggle", () => (open = box.open));
  return box;
}
