// What there is to build with, as fields: closed until somebody wants them.

import { make } from "../parts/make.js";
import { choice, number, numbers, onSupplies } from "./fields.js";
import { button, buttons } from "./leaf.js";
import { keepSupplies, usualSupplies, work } from "./work.js";
import { materials, supplies as words } from "./words.js";

const box = document.querySelector("#settings > div");

const opened = new Set();

function group(id, ...content) {
  const details = make("details", { id, open: opened.has(id) }, make("summary", {}, words.groups[id]), ...content);
  details.addEventListener("toggle", () => opened[details.open ? "add" : "delete"](id));
  return details;
}

const both = (path) => [number(`${path}[0]`, words.thick(words.sizes[path]), "sawn"), number(`${path}[1]`, words.wide(words.sizes[path]), "sawn")];
const one = (path, quantity = "sawn") => number(path, words.sizes[path], quantity);

/** A list of things that can be added and taken away. */
function many(path, fresh, fields, renew) {
  const all = path.split(".").reduce((at, key) => at[key], work.asked);
  const change = (act) => () => {
    act();
    renew();
  };
  const rows = all.map((_, i) => make("fieldset", { className: "group" }, make("legend", {}, words.nth[path](i + 1)), ...fields(`${path}[${i}]`), buttons(button(words.remove, change(() => all.splice(i, 1)), `${path}-${i}-remove`))));
  return [...rows, buttons(button(words.add[path], change(() => all.push(structuredClone(fresh))), `${path}-add`))];
}

const borrow = (path) => [number(`${path}.x`, words.borrow.x, "length"), number(`${path}.y`, words.borrow.y, "length"), number(`${path}.bank`, words.borrow.bank, "volume")];
const log = (path) => [number(`${path}.diameter`, words.log.diameter, "sawn"), number(`${path}.length`, words.log.length, "length"), number(`${path}.count`, words.log.count, "count")];

const waste = (which) => number(`buying.waste.${which}`, words.waste[which], "number");
const load = (which) => number(`carriers.${which}`, words.carriers[which], "volume");

/** Writes all fields anew. */
export function showSettings(renew) {
  const changed = () => {
    showSettings(renew);
    renew();
  };
  box.replaceChildren(
    group("paper", choice("paper", words.paper, words.papers)),
    group("lip", choice("deck", words.deck, words.decks), number("sheet[0]", words.sheetLong, "sawn"), number("sheet[1]", words.sheetWide, "sawn"), one("panel"), ...both("lip_board"), ...both("frame")),
    group("ramp", ...both("ramp_board"), ...both("joist"), ...both("post")),
    group("box", ...both("sheeting"), ...both("deadman"), one("rod")),
    group("timber", numbers("lengths", words.lengths, "length"), one("kerf")),
    group("earth", choice("placing", words.placing, words.placings), ...["barrow", "bucket", "truck"].map(load)),
    group("places", make("p", {}, words.placesHow), ...many("borrow", { x: 0, y: 3, bank: 2, feature: null }, borrow, changed)),
    group("waste", ...["timber", "board", "sheet", "earth"].map(waste)),
    group("logs", choice("log_rule", words.rule, materials.rules), ...many("logs", { diameter: 0.3, length: 3, count: 1 }, log, changed)),
    buttons(
      button(words.usual, () => {
        work.asked = { ...usualSupplies(), paper: work.asked.paper };
        changed();
      }, "usual"),
    ),
  );
}

/** Shows the fields; `renew` works the job out again. */
export function startSettings(renew) {
  const changed = () => {
    keepSupplies();
    renew();
  };
  onSupplies(changed);
  showSettings(changed);
}
