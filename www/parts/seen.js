// After a test ride: what was seen, what it teaches.

import { state, edit, onChange } from "../state.js";
import { shown } from "../units.js";
import { act, seen as words, sources } from "../words.js";
import { group } from "./fields.js";
import { make } from "./make.js";
import { asked, lies, measured, ofJumps, seenForm } from "./seen_form.js";
import { named, taught, valueOf } from "./taught.js";

// As many as a plan holds.
const MOST = 24;

const section = document.getElementById("seen");
const [intro, list, result, form] = section.querySelectorAll(":scope > [data-part]");

const capital = (text) => text[0].toUpperCase() + text.slice(1);

/** The fields of an observation, for the machinery of all fields. */
function fieldsOf(kind) {
  const choices = Object.fromEntries(ofJumps().entries());
  const fields = asked[kind].map(([name, quantity]) => {
    const word = words.fields[kind === "stopped" ? "stopped" : name];
    return [name, word, quantity === "jump" ? { choices, whole: true } : quantity];
  });
  return [...fields, ["give_or_take", words.fields.give_or_take, measured[kind][1]]];
}

/** What stands under a field: where a place lies, where an uncertainty is from. */
const origin = (i) => (inner) => {
  const value = state.plan.seen?.[i]?.[inner];
  if (inner === "give_or_take") return sources.common_practice;
  return ["from", "to", "at"].includes(inner) ? lies(value) : "";
};

function remove(i, name) {
  const button = make("button", { type: "button", data: { act: "forget" } }, act.remove);
  button.setAttribute("aria-label", `${act.remove}: ${name}`);
  button.addEventListener("click", () => {
    edit((plan) => plan.seen.splice(i, 1), "structure");
    (list.querySelector("summary") ?? form.querySelector("input:checked")).focus();
  });
  return make("div", { className: "actions" }, button);
}

function item(observation, i, open) {
  const summary = make("summary", {}, make("b"), make("span"));
  const fields = group(`seen[${i}]`, [null, fieldsOf(observation.kind)], origin(i));
  const details = make("details", { open }, summary, fields, remove(i, named(observation)));
  return make("li", { data: { seen: i } }, details, make("p", { className: "from" }), make("p", { className: "fault", hidden: true }));
}

/** What the planned ride shows there, and what a ride with what was learnt shows. */
function beside(observation, i) {
  const rider = observation.rider ?? 0;
  if (rider > 0) return words.other(state.plan.riders[rider]?.label ?? "");
  const found = state.study.fit?.fit.seen.find((seen) => seen.index === i);
  if (!found) return "";
  if (found.used !== "used") return words.unused[found.used];
  const write = (value) => (value == null ? words.never : shown(value, measured[observation.kind][1]));
  const text = words.beside(write(found.planned), write(found.found));
  return found.scatter > found.give_or_take ? `${text} ${words.scatter(write(found.scatter))}` : text;
}

/** Writes anew what stands outside the fields. */
function tell() {
  const seen = state.plan.seen ?? [];
  const { fit } = state.study;
  for (const li of list.children) {
    const i = Number(li.dataset.seen);
    const observation = seen[i];
    if (!observation) continue;
    const [name, value] = li.querySelectorAll("summary > *");
    name.textContent = capital(named(observation));
    value.textContent = observation.kind === "stopped" ? "" : valueOf(observation);
    const [text, fault] = li.querySelectorAll(":scope > p");
    text.textContent = beside(observation, i);
    const doubted = fit?.fit.doubted.includes(i);
    fault.hidden = !doubted && !fit?.fit.far.includes(i);
    fault.textContent = doubted ? words.doubted : words.far;
  }
  result.hidden = !seen.some((observation) => !observation.rider);
  if (result.hidden || state.faults.length) return;
  const unlearnt = state.study.lost ? words.lost : words.nothing;
  if (fit === undefined) result.replaceChildren(make("p", {}, words.working));
  else result.replaceChildren(...(fit ? taught(fit) : [make("p", {}, unlearnt)]));
}

function show() {
  const seen = state.plan.seen ?? [];
  const open = [...list.querySelectorAll("details")].map((details) => details.open);
  intro.textContent = words.intro;
  list.replaceChildren(...seen.map((observation, i) => item(observation, i, open[i] && open.length === seen.length)));
  list.hidden = !seen.length;
  const add = (observation) => {
    edit((plan) => (plan.seen = [...(plan.seen ?? []), observation]), "structure");
    document.getElementById("see-add").focus();
  };
  form.replaceChildren(...(seen.length < MOST ? [seenForm(add)] : [make("p", {}, words.full)]));
  tell();
}

export function startSeen() {
  onChange((what) => {
    if (!state.story) return;
    if (what === "structure") show();
    else if (what === "plan") {
      for (const box of list.querySelectorAll(".field[data-field]")) box.sync();
      tell();
    } else if (what === "study") tell();
  });
}
