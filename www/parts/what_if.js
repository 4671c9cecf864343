// What if: the same line ridden a little otherwise, pale beside the ride, a tap for each.

import { state, onChange, rideOf } from "../state.js";
import { jumpNames } from "../names.js";
import { shown } from "../units.js";
import { howShort, whatIf as words } from "../words.js";
import { haunt } from "./drawing.js";
import { make } from "./make.js";
import { explain } from "./terms.js";

const box = document.querySelector("#what-if .actions");
const told = document.querySelector("#what-if ul");

// A push more or less, m/s: what a hand at the saddle gives (common practice, no source).
const PUSH = 0.5;
// How long an edit rests before the others ride along again, ms.
const REST = 200;
// Less speed than this is no other speed, m/s.
const STILL = 0.03;

function push(plan, by) {
  const ramp = plan.line.features?.find((f) => f.kind === "start_ramp");
  if (ramp) ramp.push_off = Math.max((ramp.push_off ?? 0) + by, 0);
  else plan.initial_speed = Math.max(plan.initial_speed + by, 0);
}

const style = (name) => (plan) => (plan.riders[0].rider.style = name);
const ground = (name) => (plan) => (plan.weather = { ...plan.weather, ground: name });

// What each does to a plan, and whether the plan does so already.
const KINDS = {
  more: [(plan) => push(plan, PUSH), () => false],
  less: [(plan) => push(plan, -PUSH), () => false],
  passive: [style("passive"), (plan) => plan.riders[0].rider.style === "passive"],
  absorbing: [style("absorbing"), (plan) => (plan.riders[0].rider.style ?? "absorbing") === "absorbing"],
  pumping: [style("pumping"), (plan) => plan.riders[0].rider.style === "pumping"],
  damp: [ground("damp"), (plan) => (plan.weather?.ground ?? "dry") !== "dry"],
  dry: [ground("dry"), (plan) => (plan.weather?.ground ?? "dry") === "dry"],
};

const chosen = new Set();
let waiting = 0;

/** Rides the plan otherwise; nothing where that cannot be ridden. */
function otherwise(kind) {
  const plan = structuredClone(state.good);
  plan.riders.length = 1;
  // What was seen of others would belong to nobody.
  delete plan.seen;
  KINDS[kind][0](plan);
  try {
    return rideOf(plan);
  } catch (faults) {
    if (!Array.isArray(faults)) throw faults;
    return null;
  }
}

function jump(other, own, name) {
  if (other.speed == null) return words.never(name, howShort[other.how]);
  const speed = shown(other.speed, "speed");
  const by = other.speed - (own?.speed ?? other.speed);
  const told = Math.abs(by) < STILL ? words.same(speed) : words.other(speed, shown(Math.abs(by), "speed"), by < 0);
  return words.jump(name, told, howShort[other.how]);
}

function line(kind, story) {
  const name = jumpNames(state.good);
  const jumps = story.jumps.map((row, i) => jump(row, state.story.jumps[i], name(row)));
  return make("li", { data: { kind } }, words.told(words.kinds[kind][0], jumps.join("; ")));
}

function ride() {
  const rides = [...chosen].map((kind) => [kind, otherwise(kind)]).filter(([, riding]) => riding);
  told.replaceChildren(...rides.map(([kind, riding]) => line(kind, riding.story())));
  explain(told);
  haunt(rides.map(([kind, riding]) => [words.kinds[kind][1], riding]));
}

function button(kind) {
  const made = make("button", { type: "button", data: { kind } }, words.kinds[kind][0]);
  made.setAttribute("aria-pressed", "false");
  made.addEventListener("click", () => {
    if (!chosen.delete(kind)) chosen.add(kind);
    made.setAttribute("aria-pressed", chosen.has(kind));
    ride();
  });
  return made;
}

/** Shows what would be other than the plan, and takes back what no longer is. */
function offer() {
  for (const made of box.children) {
    const { kind } = made.dataset;
    made.hidden = KINDS[kind][1](state.good);
    if (made.hidden) chosen.delete(kind);
    made.setAttribute("aria-pressed", chosen.has(kind));
  }
}

export function startWhatIf() {
  box.replaceChildren(...Object.keys(KINDS).map(button));
  onChange((what) => {
    if (what === "opened") chosen.clear();
    if (!state.good || !["plan", "structure"].includes(what)) return;
    offer();
    clearTimeout(waiting);
    if (chosen.size || told.children.length) waiting = setTimeout(ride, REST);
  });
}
