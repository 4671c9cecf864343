// What a test ride teaches, in words, and the way to carry it to the plan.

import { state, edit } from "../state.js";
import { fixed, list as joined, spelt } from "../numbers.js";
import { apart, shown } from "../units.js";
import { howShort, numbered, seen as words } from "../words.js";
import { make } from "./make.js";
import { say } from "./message.js";
import { measured, ofJumps } from "./seen_form.js";

// Standard deviations to either side of a value that its range is told with: 95 in a hundred hold it.
const TWO = 2;

// Nearer to the plan than this, in standard deviations, nothing was learnt.
const SAME = 0.5;

// Up to so many times as far off as the measuring explains, all goes together.
const ROUGH = 1.5;

// With fewer observations than this, what was planned still weighs much.
const FEW = 3;

/** One observation in a few words, as the part of a sentence. */
export function named(observation) {
  const length = (name) => shown(observation[name], "length");
  if (observation.kind === "time") return words.named.time(length("from"), length("to"));
  if (observation.kind === "landed") return words.named.landed(ofJumps()[observation.jump] ?? numbered("jump", observation.jump + 1));
  return words.named[observation.kind](length("at"));
}

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

/** Why a lip comes out faster although the rider was timed slower, or the other way round; nothing where no reader sees it. */
function why({ planned, speed, scatter, against }) {
  if (!against || shown(planned, "speed") === shown(speed, "speed")) return [];
  const faster = speed > planned;
  const reasons = against.map((what) => words.because[what][faster ? 0 : 1]);
  return [reasons.length ? words.against(faster, joined(reasons)) : words.byChance(faster, shown(TWO * scatter, "speed"))];
}

function lips(fit) {
  const called = ofJumps();
  const reached = fit.lips.filter((lip) => lip.speed != null);
  const text = (lip) => {
    const { planned, speed, sigma } = lip;
    const told = words.lip(called[lip.lip], shown(speed, "speed"), apart(TWO * sigma, "speed")[0], planned == null ? null : shown(planned, "speed"));
    return [told, ...why(lip)].join(" ");
  };
  if (!reached.length) return [];
  return [make("p", {}, words.rest), make("ul", {}, ...reached.map((lip) => make("li", {}, text(lip))))];
}

/** What the plan would endanger with what was learnt: jumps that are clean no more, or in fewer what-ifs. */
function dangers(fit, ahead) {
  const called = ofJumps();
  const now = state.study.spreads;
  return fit.lips.flatMap(({ lip, how }) => {
    if (state.story.jumps[lip].how !== "clean") return [];
    if (how !== "clean") return [words.spoils(called[lip], howShort[how])];
    const { clean, tried } = ahead[lip];
    return now && clean < now[lip].clean ? [words.lessSure(called[lip], clean, tried, now[lip].clean)] : [];
  });
}

/** That little was seen, and what would tell more: only what is not there yet. */
function advice() {
  const kinds = state.good.seen.filter((seen) => !seen.rider).map(({ kind }) => kind);
  const lacking = [];
  if (kinds.filter((kind) => kind === "time" || kind === "speed").length < 2) lacking.push(words.more.flag);
  if (state.story.jumps.length && !kinds.includes("landed")) lacking.push(words.more.landing);
  return lacking.length ? `${words.few} ${words.tell(joined(lacking))}` : words.few;
}

function use(plan) {
  const button = make("button", { type: "button", id: "use-fit" }, words.use);
  button.addEventListener("click", () => {
    edit((now) => Object.assign(now, structuredClone(plan)), "structure");
    say(words.used);
    document.getElementById("taught").focus();
  });
  return make("p", { className: "actions" }, button);
}

/** All that is said, as elements. */
export function taught({ fit, plan, ahead }) {
  if (!fit.agrees) return [make("p", { className: "fault" }, clash(fit)), make("p", {}, words.first)];
  const [sure, unsure] = [true, false].map((which) => fit.inputs.filter((input) => input.sure === which));
  const used = fit.seen.filter((seen) => seen.used === "used").length;
  const content = [];
  const add = (text, className = "") => content.push(make("p", { className }, text));
  for (const input of sure) add(told(input), "learnt");
  if (unsure.length) content.push(make("p", {}, words.unsure), make("ul", {}, ...unsure.map((input) => make("li", {}, told(input)))));
  add(fit.misfit < ROUGH ? words.fits : words.roughly(fixed(fit.misfit, 1)));
  if (used < FEW) add(advice());
  content.push(...lips(fit));
  const same = fit.inputs.every((input) => Math.abs(input.value - input.planned) < SAME * input.sigma);
  if (same || !ahead) add(words.same);
  if (ahead) content.push(...dangers(fit, ahead).map((text) => make("p", { className: "caution" }, text)), use(plan));
  add(words.ranges, "from");
  if (!ahead) add(words.narrower, "from");
  return content;
}
