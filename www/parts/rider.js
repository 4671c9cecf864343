// Who rides: the riders of the plan, the first of whom the line is for.

import { state, edit } from "../state.js";
import { fields, act } from "../words.js";
import { renamed } from "./preset.js";
import { changeRiders } from "./who.js";

/** Takes the focus back to whoever rides, after the list was written anew. */
export const focusRider = () => document.querySelector("#rider .riders input:checked")?.focus();

/** The choice of a rider. Whoever is chosen is put first in the plan, and so travels in the link. */
function riders() {
  const box = document.createElement("fieldset");
  box.className = "riders";
  // What is wrong with another rider than the first is said here.
  box.dataset.field = "riders";
  const legend = document.createElement("legend");
  legend.textContent = fields.label;
  box.append(legend);
  const all = state.plan.riders.map((mount, i) => [mount.label, i]);
  for (const [text, i] of all.toSorted(([a], [b]) => a.localeCompare(b))) {
    const label = document.createElement("label");
    const input = Object.assign(document.createElement("input"), { type: "radio", name: "rider", value: i });
    input.checked = i === 0;
    input.addEventListener("change", () => {
      edit((plan) => changeRiders(plan, (riders) => riders.unshift(...riders.splice(i, 1))), "structure");
      focusRider();
    });
    const name = document.createElement("span");
    name.textContent = text;
    label.append(input, name);
    box.append(label);
  }
  const told = Object.assign(document.createElement("p"), { className: "fault", hidden: true });
  box.append(told);
  return box;
}

/** What the rider is called. */
function name() {
  const box = document.createElement("div");
  box.className = "field";
  box.dataset.field = "riders[0].label";
  box.innerHTML = `<label for="rider-name"></label><input id="rider-name" autocomplete="off" spellcheck="false" aria-describedby="rider-name-told">
    <p class="fault" id="rider-name-told" hidden></p>`;
  box.querySelector("label").textContent = fields.name;
  const input = box.querySelector("input");
  input.addEventListener("change", () => {
    const text = input.value.trim();
    const before = state.plan.riders[0].label;
    if (text) {
      renamed(before, text);
      edit((plan) => (plan.riders[0].label = text));
    }
    box.sync();
  });
  box.sync = () => {
    const { label } = state.plan.riders[0];
    if (document.activeElement !== input) input.value = label;
    const chip = document.querySelector("#rider .riders input:checked + span");
    if (chip) chip.textContent = label;
  };
  box.sync();
  return box;
}

function remove() {
  const box = document.createElement("div");
  box.className = "actions";
  const button = document.createElement("button");
  button.type = "button";
  button.dataset.act = "remove-rider";
  button.textContent = act.removeRider;
  button.disabled = state.plan.riders.length < 2;
  button.addEventListener("click", () => {
    edit((plan) => changeRiders(plan, (riders) => riders.shift()), "structure");
    focusRider();
  });
  box.append(button);
  return box;
}

/** Who rides, by what name, and the way out of the plan. */
export const rider = () => [riders(), name(), remove()];
