// Where the speed goes: what each feature takes, and what rollers take from the next lip.

import { state, onChange, features } from "../state.js";
import { shown } from "../units.js";
import { list } from "../numbers.js";
import { names } from "../names.js";
import * as words from "../words.js";
import { make } from "./make.js";
import { explain } from "./terms.js";

// Less head than this is not worth a word, m.
const NOUGHT = 0.015;
// Less speed than this is not worth a word, m/s.
const STILL = 0.03;

const body = document.querySelector("#costs tbody");
const tolls = document.getElementById("tolls");
const length = (metres) => shown(metres, "length");

function bar(cost, most) {
  const box = make("div", { className: "stack", ariaHidden: "true" });
  for (const cause of Object.keys(words.causes)) {
    const part = make("i", { data: { cause } });
    part.style.width = `${(Math.max(cost[cause], 0) / most) * 100}%`;
    if (cost[cause] > NOUGHT) box.append(part);
  }
  return box;
}

function causes(cost) {
  const parts = Object.entries(words.causes)
    .filter(([cause]) => Math.abs(cost[cause]) > NOUGHT)
    .map(([cause, word]) => (cost[cause] < 0 ? words.back(word, length(-cost[cause])) : `${word} ${length(cost[cause])}`));
  if (cost.given > NOUGHT) parts.push(words.given(length(cost.given)));
  const all = parts.join(", ");
  return cost.each.length ? `${all}. ${words.oneByOne(list(cost.each.map(length)))}` : all;
}

function row(cost, name, most) {
  // Of rollers it is known what flat ground would do in their place: one figure, here and in the sentence on them.
  const rollers = features(state.good)[cost.feature]?.kind === "roller";
  const toll = (state.study.tolls ?? []).find((t) => t.feature === cost.feature);
  const both = toll?.with != null && toll.without != null;
  const slower = rollers ? both && toll.without - toll.with : cost.next_lip;
  const speed = slower > STILL ? shown(slower, "speed") : null;
  const gained = slower < -STILL ? shown(-slower, "speed") : null;
  const takes = cost.net < 0 ? words.gives(length(-cost.net), gained) : words.takes(length(cost.net), speed, gained);
  return make(
    "tr",
    { data: { feature: cost.feature } },
    make("th", { scope: "row" }, name),
    make("td", { data: { what: "takes" } }, takes),
    make("td", { data: { what: "causes" } }, bar(cost, most), causes(cost)),
  );
}

function told(toll, called) {
  const [name, lip] = [called[toll.feature], called[state.story.jumps[toll.lip].feature]];
  if (toll.with == null) return toll.without == null ? [] : [words.tolls.blocked(name, lip)];
  if (toll.without != null && toll.with - toll.without > STILL) return [words.tolls.gives(name, lip, shown(toll.with - toll.without, "speed"))];
  if (toll.without == null || toll.without - toll.with < STILL) return [words.tolls.none(name)];
  const said = [words.tolls.all(name, lip, shown(toll.without - toll.with, "speed"))];
  const back = toll.one_fewer - toll.with;
  if (toll.one_fewer != null && toll.one_fewer < toll.without && back > STILL) said.push(words.tolls.fewer(shown(back, "speed")));
  if (toll.higher != null) said.push(words.tolls.higher(length(toll.higher)));
  return said;
}

/** What was taken from a rider up to the first lip, m: rolling, air, the body, and what it gave. */
function upTo(costs, feature) {
  const before = costs.filter((c) => c.feature < feature);
  const sum = (of) => before.reduce((all, c) => all + of(c), 0);
  return {
    rolling: sum((c) => c.rolling),
    drag: sum((c) => c.drag),
    body: sum((c) => c.landing + c.tyres + c.legs + c.turning),
    given: sum((c) => c.given),
  };
}

/** Why the others arrive faster or slower at the first lip. */
function reasons(called) {
  const { jumps, costs, others } = state.story;
  if (!jumps.length || !costs.length) return [];
  const { feature } = jumps[0];
  const own = upTo(costs, feature);
  return others.map((other) => {
    const theirs = upTo(other.costs, feature);
    const parts = Object.entries(words.whyParts).map(([key, what]) => [what, length(own[key]), length(theirs[key])]);
    return make("p", {}, words.why(other.label, state.good.riders[0].label, called[feature], parts));
  });
}

function show() {
  const called = names(state.good);
  const { costs } = state.story;
  const lost = (c) => Object.keys(words.causes).reduce((sum, cause) => sum + Math.max(c[cause], 0), 0);
  const most = Math.max(...costs.map(lost), NOUGHT);
  document.getElementById("costs").hidden = !costs.length;
  body.replaceChildren(...costs.map((cost) => row(cost, called[cost.feature], most)));
  const known = state.study.tolls ?? [];
  const said = known.map((toll) => make("p", {}, told(toll, called).join(" ")));
  tolls.replaceChildren(...said, ...reasons(called), make("p", {}, words.tolls.intro));
  explain(tolls);
}

export function startCosts() {
  onChange((what) => {
    if (state.story && ["plan", "structure", "study"].includes(what)) show();
  });
}
