// What only whoever builds the line has to say: the soil, widths, and which landings boards hold; and the way to the
// sheets that are built from.

import { link_to } from "../carryline.js";
import { state, features } from "../state.js";
import { names } from "../names.js";
import { dig as words, kinds, soils } from "../words.js";
import { group } from "./fields.js";
import { make } from "./make.js";

// What a width of its own begins with, m: a grown-up's bike and some room.
const WIDE = 1.8;

const own = (path, has, is) => [[path, has, { toggle: WIDE }], [path, is, "length"]];

const WHOLE = [["yard.soil", words.soil, { choices: soils }], ["width", words.width, "length"]];

const JUMP = [
  ...own("lip.width", words.ownLip, words.lip),
  ...own("landing.width", words.ownLanding, words.landing),
  ["landing.boxed", words.boxed, { toggle: true }],
];

const WIDTH = own("width", words.own, words.width);

const FORMS = { start_ramp: WIDTH, roller: WIDTH, turn: WIDTH, jump: JUMP };

/** The way to the sheets of the line as it stands. */
export function sheets(text) {
  const way = make("a", { href: "build.html", data: { sheets: "" } }, text);
  way.addEventListener("click", () => (way.href = `build.html#${link_to(state.plan)}`));
  return way;
}

/** Fields of the whole line, then of each feature that may have its own. */
export function dig() {
  const called = names(state.plan);
  const each = features(state.plan).map((feature, i) => FORMS[feature.kind] && group(`line.features[${i}]`, [called[i] ?? kinds[feature.kind], FORMS[feature.kind]]));
  return [make("p", {}, words.intro), group("", [null, WHOLE]), ...each.filter(Boolean), make("p", {}, sheets(words.sheets))];
}
