// A card for each jump, in words for a child: how high, how far, how long, how heavy, how soft.

import { state, onChange } from "../state.js";
import { fixed } from "../numbers.js";
import { jumpNames } from "../names.js";
import { rough } from "../units.js";
import { cards as words, howShort, seconds } from "../words.js";
import { make } from "./make.js";
import { explain } from "./terms.js";

const box = document.querySelector("#cards ol");
const rules = document.querySelector("#cards .rules");

// Drops, m, up to which each landing is likened: a kerb is about 0.12 m high, a stair 0.18, a chair 0.45
// (common practice, no source). A landing is put with the next higher.
const DROPS = [
  [0.12, "kerb"],
  [0.3, "stair"],
  [0.5, "chair"],
  [Infinity, "table"],
];

// What legs can hold for a moment, in body weights, and the travel left below which they have none, m: landings
// beyond either are hard, however low the drop (common practice, no source).
const HELD = 4.5;
const SPENT = 0.03;


/** How the landing feels: never softer than the verdict has it. */
function landing(jump, impact) {
  if (jump.how === "knuckle") return words.knuckle;
  const [, likeness] = DROPS.find(([most]) => jump.fall_height <= most);
  const hard = impact && (impact.peak_g > HELD || impact.travel_left < SPENT);
  if (hard && ["kerb", "stair"].includes(likeness)) return words.spent(fixed(impact.peak_g, 1));
  return words.landing[likeness](rough(jump.fall_height));
}

function sentences(jump, felt, impact) {
  if (jump.how !== "clean" && jump.how !== "deep" && jump.how !== "knuckle") return [words.not(howShort[jump.how])];
  if (!felt) return [];
  return [
    words.flight(rough(felt.height), rough(felt.far), seconds(fixed(jump.airtime, 1))),
    words.lip(fixed(felt.lip_g, 1)),
    landing(jump, impact),
  ];
}

function show() {
  const { jumps, felt, impacts } = state.story;
  const of = (list, jump) => list.find((one) => one.lip === jump.lip);
  const name = jumpNames(state.good);
  const card = (jump) =>
    make(
      "li",
      { data: { lip: jump.lip } },
      make("h3", {}, name(jump)),
      ...sentences(jump, of(felt, jump), of(impacts, jump)).map((said) => make("p", {}, said)),
    );
  box.replaceChildren(...jumps.map(card));
  explain(box);
}

export function startCards() {
  rules.replaceChildren(...words.rules.map((rule) => make("li", {}, rule)));
  onChange((what) => {
    if (state.story && ["plan", "structure"].includes(what)) show();
  });
}
