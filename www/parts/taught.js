// What a test ride teaches, in words, and the way to carry it to the plan.

import { state, edit } from "../state.js";
import { fixed, list as joined, spelt } from "../numbers.js";
import { apart, shown } from "../units.js";
import { seen as words } from "../words.js";
import { make } from "./make.js";
import { say } from "./message.js";
import { jumpNames } from "./seen_form.js";

// Standard deviations to either side of a value that its range is told with: 95 in a hundred hold it.
const TWO = 2;

// Nearer to the plan than this, in standard deviations, nothing was learnt.
const SAME = 0.5;

// What was seen when it was carried to the plan: the same things are not to count again and again.
let usedFor = "";

// Up to so many times as far off as the measuring explains, all goes together.
const ROUGH = 1.5;

// With fewer observations than this, what was planned still weighs much.
const FEW = 3;

/** One observation in a few words, as the part of a sentence. */
export function named(observation) {
  const length = (name) => shown(observation[name], "length");
  if (observation.kind === "time") return words.named.time(length("from"), length("to"));
  if (observation.kind === "landed") return words.named.landed(jumpNames()[observation.jump] ?? words.jump(observation.jump + 1));
  return words.named[observation.kind](length("at"));
}

// What the value that was measured is called, and what it is.
export const measured = { time: ["seconds", "time"], speed: ["speed", "speed"], landed: ["past_knuckle", "length"], stopped: ["at", "length"] };

/** The value that was measured, written out. */
export function valueOf(observation) {
  const [name, quantity] = measured[observation.kind];
  return shown(observation[name], quantity);
}

const factor = (value) => spelt(value.toFixed(value < 0.95 ? 2 : 1).replace(/0$/, (nought) => (value < 0.95 ? "" : nought)));

function told({ what, planned, value, sigma, sure }) {
  const [low, high] = [Math.max(value - TWO * sigma, 0), value + TWO * sigma];
  const said = words.input[what];
  if (what === "start") return said(shown(value, "speed"), shown(planned, "speed"), apart(low, "speed")[0], shown(high, "speed"), sure);
  const top = what === "skill" ? Math.min(high, 1) : high;
  return said(factor(value), factor(planned), factor(low), factor(top), sure);
}

/** What does not go together, by name. */
function clash({ doubted, far }) {
  const name = (observation) => (observation.kind === "stopped" ? named(observation) : words.valued(named(observation), valueOf(observation)));
  const list = (which) => joined(which.map((i) => name(state.good.seen[i])));
  if (doubted.length === 1) return words.one(list(doubted));
  if (doubted.length === 2) return words.two(list(doubted));
  if (doubted.length) return words.many(list(doubted));
  return far.length ? words.none(list(far)) : words.noneFar;
}

function lips(fit) {
  const called = jumpNames();
  const reached = fit.lips.filter((lip) => lip.speed != null);
  const text = ({ lip, planned, speed, sigma }) =>
    words.lip(called[lip], shown(speed, "speed"), apart(TWO * sigma, "speed")[0], planned == null ? null : shown(planned, "speed"));
  if (!reached.length) return [];
  return [make("p", {}, words.rest), make("ul", {}, ...reached.map((lip) => make("li", {}, text(lip))))];
}

function use(plan) {
  const button = make("button", { type: "button", id: "use-fit" }, words.use);
  button.addEventListener("click", () => {
    usedFor = JSON.stringify(plan.seen);
    edit((now) => Object.assign(now, structuredClone(plan)), "structure");
    say(words.used);
    document.getElementById("taught").focus();
  });
  return make("p", { className: "actions" }, button);
}

/** All that is said, as elements. */
export function taught({ fit, plan }) {
  if (!fit.agrees) return [make("p", { className: "fault" }, clash(fit)), make("p", {}, words.first)];
  const [sure, unsure] = [true, false].map((which) => fit.inputs.filter((input) => input.sure === which));
  const used = fit.seen.filter((seen) => seen.used === "used").length;
  const content = [];
  const add = (text, className = "") => content.push(make("p", { className }, text));
  for (const input of sure) add(told(input), "learnt");
  if (unsure.length) content.push(make("p", {}, words.unsure), make("ul", {}, ...unsure.map((input) => make("li", {}, told(input)))));
  add(fit.misfit < ROUGH ? words.fits : words.roughly(fixed(fit.misfit, 1)));
  if (used < FEW) add(words.few);
  content.push(...lips(fit));
  const same = fit.inputs.every((input) => Math.abs(input.value - input.planned) < SAME * input.sigma);
  if (same || usedFor === JSON.stringify(plan.seen)) add(words.same);
  else content.push(use(plan));
  add(words.ranges, "from");
  return content;
}
