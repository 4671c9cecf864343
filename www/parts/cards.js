// A card for each jump, in words for a child: how high, how far, how long, how heavy, how soft.

import { state, onChange } from "../state.js";
import { fixed } from "../numbers.js";
import { names } from "../names.js";
import { shown } from "../units.js";
import { cards as words, howShort, numbered, seconds } from "../words.js";
import { make } from "./make.js";

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

const length = (metres) => shown(metres, "length");

function sentences(jump, felt) {
  if (jump.how !== "clean" && jump.how !== "deep" && jump.how !== "knuckle") return [words.not(howShort[jump.how])];
  if (!felt) return [];
  const [, likeness] = DROPS.find(([most]) => jump.fall_height <= most);
  return [
    words.flight(length(felt.height), length(felt.far), seconds(fixed(jump.airtime, 1))),
    words.lip(fixed(felt.lip_g, 1)),
    words.landing[likeness](length(jump.fall_height)),
  ];
}

function show() {
  const { jumps, felt } = state.story;
  const called = names(state.good);
  const card = (jump) =>
    make(
      "li",
      { data: { lip: jump.lip } },
      make("h3", {}, called[jump.feature] ?? numbered("jump", jump.lip + 1)),
      ...sentences(jump, felt.find((f) => f.lip === jump.lip)).map((said) => make("p", {}, said)),
    );
  box.replaceChildren(...jumps.map(card));
}

export function startCards() {
  rules.replaceChildren(...words.rules.map((rule) => make("li", {}, rule)));
  onChange((what) => {
    if (state.story && ["plan", "structure"].includes(what)) show();
  });
}
