// The plan as a list: features in riding order, then who rides, the yard and the day.

import { state, edit, choose, onChange, features } from "../state.js";
import { names } from "../names.js";
import { shown } from "../units.js";
import { kinds, act, dig as digging, groups, digests, grounds, readings as words, soils } from "../words.js";
import { formOf, fresh, freshFor, riderForm, wheelsForm, startForm, yardForm, weatherForm } from "./forms.js";
import { dig } from "./dig.js";
import { group } from "./fields.js";
import { rider } from "./rider.js";
import { origin, startFrom } from "./preset.js";
import { readings } from "./readings.js";
import { explainFields } from "./terms.js";
import { fall } from "./yard.js";

// A walking pace and a half, m/s: what a rider rolls in with where no ramp gives more.
const START_SPEED = 3;

const list = document.getElementById("features");
const more = document.getElementById("more");

const syncChosen = () => {
  for (const box of list.querySelectorAll(`[data-feature="${state.chosen}"] .field[data-field]`)) box.sync();
};

const syncAll = () => {
  for (const box of document.querySelectorAll("#plan .field[data-field]")) box.sync();
};

/** The numbers that tell one feature from another at a glance. */
function digest(feature) {
  const texts = digests[feature.kind];
  return texts(feature, (value) => shown(value, "length"));
}

function button(text, name, act) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = text;
  if (name) made.setAttribute("aria-label", `${text}: ${name}`);
  made.addEventListener("click", act);
  return made;
}

/** A line without a start ramp needs a speed to start with; one with a ramp has its push-off. */
function startSomehow(plan) {
  const ramp = features(plan)[0]?.kind === "start_ramp";
  if (ramp) delete plan.initial_speed;
  else plan.initial_speed ??= START_SPEED;
}

function restructure(change, then) {
  state.chosen = then;
  edit((plan) => {
    change(plan.line.features);
    startSomehow(plan);
  }, "structure");
  list.querySelector(`[data-feature="${then}"] .feature`)?.focus();
}

function actions(i, name) {
  const box = document.createElement("div");
  box.className = "actions";
  const all = features(state.plan);
  const swap = (j) => restructure((f) => ([f[i], f[j]] = [f[j], f[i]]), j);
  const earlier = button(act.earlier, name, () => swap(i - 1));
  const later = button(act.later, name, () => swap(i + 1));
  earlier.dataset.act = "earlier";
  later.dataset.act = "later";
  earlier.disabled = i === 0;
  later.disabled = i === all.length - 1;
  const remove = button(act.remove, name, () => restructure((f) => f.splice(i, 1), Math.min(i, all.length - 2)));
  remove.dataset.act = "remove";
  const add = document.createElement("select");
  add.setAttribute("aria-label", `${act.add}: ${name}`);
  add.dataset.act = "add";
  add.append(new Option(act.add, ""));
  for (const kind of Object.keys(fresh)) add.append(new Option(kinds[kind], kind));
  // A start ramp can only come first, and a run-out last.
  const places = { start_ramp: 0, run_out: all.length };
  const last = all.at(-1).kind === "run_out" ? all.length - 1 : all.length;
  add.addEventListener("change", () => {
    const at = places[add.value] ?? Math.min(i + 1, last);
    restructure((f) => f.splice(at, 0, freshFor(add.value, state.plan.riders[0].rider.stature)), at);
  });
  box.append(earlier, later, remove, add);
  return box;
}

function item(feature, i, name) {
  const li = document.createElement("li");
  li.dataset.feature = i;
  li.dataset.kind = feature.kind;
  const open = state.chosen === i;
  const head = button("", null, () => choose(open ? null : i));
  head.className = "feature";
  head.setAttribute("aria-expanded", open);
  const [label, numbers] = [document.createElement("b"), document.createElement("span")];
  label.textContent = name;
  numbers.textContent = digest(feature);
  head.append(label, numbers);
  li.append(head);
  if (open) {
    const base = `line.features[${i}]`;
    const groups = formOf(feature).map((g) => group(base, g));
    explainFields(groups, kinds[feature.kind]);
    li.append(...groups, actions(i, name));
  }
  return li;
}

function showFeatures() {
  const all = features(state.plan);
  const called = names(state.plan);
  list.replaceChildren(...all.map((feature, i) => item(feature, i, called[i])));
  const { surveyed } = state.plan.line;
  if (surveyed) list.append(Object.assign(document.createElement("li"), { textContent: groups.survey(surveyed.points.length) }));
}

function section(name, id, ...content) {
  const details = document.createElement("details");
  details.id = id;
  const summary = document.createElement("summary");
  summary.append(name, document.createElement("span"));
  details.append(summary, ...content);
  return details;
}

const riderFields = (form) => form.map((g) => group("riders[0]", g, origin));

function showMore() {
  const open = [...more.querySelectorAll("details[open]")].map((d) => d.id);
  more.replaceChildren(
    section(groups.rider, "rider", ...rider(), startFrom(), ...riderFields(riderForm), section(groups.wheels, "wheels", ...riderFields(wheelsForm))),
    section(groups.yard, "yard", ...yardForm.map((g) => group("yard", g)), ...fall(), group("", startForm), section(words.title, "readings", readings())),
    section(groups.weather, "weather", ...weatherForm.map((g) => group("weather", g))),
    section(digging.title, "dig", ...dig()),
  );
  for (const part of more.children) explainFields(part.querySelectorAll("fieldset.group"));
  for (const id of open) document.getElementById(id).open = true;
  digestMore();
}

/** What the closed parts of the plan hold. */
function digestMore() {
  const { riders, yard, weather } = state.plan;
  const say = (id, text) => (document.querySelector(`#${id} summary span`).textContent = text);
  say("rider", riders[0].label);
  say("yard", shown(yard.length, "length"));
  say("readings", yard.lie.surveyed?.length ?? "");
  say("weather", grounds[weather.ground]);
  say("dig", soils[yard.soil]);
}

function digestAll() {
  digestMore();
  features(state.plan).forEach((feature, i) => {
    const span = list.querySelector(`[data-feature="${i}"] .feature span`);
    if (span) span.textContent = digest(feature);
  });
  const called = names(state.plan);
  list.querySelectorAll(".feature b").forEach((b, i) => (b.textContent = called[i]));
}

function bringIntoView() {
  const item = list.querySelector(`[data-feature="${state.chosen}"]`);
  if (!item) return;
  const pane = document.getElementById("plan");
  const behavior = matchMedia("(prefers-reduced-motion: reduce)").matches ? "auto" : "smooth";
  // Where the plan scrolls by itself the page stays, and the drawing on it.
  if (getComputedStyle(pane).overflowY === "auto") {
    const room = parseFloat(getComputedStyle(pane).scrollPaddingTop) || 0;
    pane.scrollBy({ top: item.getBoundingClientRect().top - pane.getBoundingClientRect().top - room, behavior });
  } else item.scrollIntoView({ block: "start", behavior });
}

export function startPlan() {
  onChange((what) => {
    if (what === "structure") {
      showFeatures();
      showMore();
    } else if (what === "chosen") {
      showFeatures();
      bringIntoView();
    } else if (what === "ridden" || what === "left" || (what === "sketched" && state.faults.length)) {
      // Under a moving finger the drawing says the numbers; the fields follow with the ride.
      syncChosen();
    } else if (what === "plan") {
      syncAll();
      digestAll();
    }
  });
}
