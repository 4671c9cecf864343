// A rider to start from: an age and a size of wheel give every number, and each says where it is from.

import { preset } from "../carryline.js";
import { state, edit } from "../state.js";
import { spelt } from "../numbers.js";
import { shown } from "../units.js";
import { preset as words, sources, likely } from "../words.js";
import { get } from "./path.js";
import { changeRiders } from "./who.js";

// As many as a plan holds.
const MOST = 4;

// What is chosen in the panel; the wheel is null where the fitting one is wanted.
const choice = { age: 10, sex: "either", wheel: null, tread: "smooth" };

// What was made since the page was opened, by the rider's name.
const made = new Map();

const offer = (more = {}) => preset({ label: "", ...choice, ...more });

/** Keeps what is known of a rider under a new name. */
export function renamed(before, after) {
  if (!made.has(before)) return;
  made.set(after, made.get(before));
}

const spread = ({ likely: ends }, quantity) => likely(...ends.map((value) => shown(value, quantity)));

/** Where the number in a field of the rider comes from; nothing once it is another. */
export function origin(field, quantity) {
  const [own] = state.plan.riders;
  const start = made.get(own.label);
  const note = start?.notes.find((n) => n.field === field);
  const kept = (path) => get(own, path) === get(start.mount, path);
  if (!note || ![field, ...note.follows].every(kept)) return "";
  return note.likely ? `${sources[note.source]} ${spread(note, quantity)}` : sources[note.source];
}

const isAdult = (age, { ages }) => age === ages[1];

/** A name after the age; with a number behind it where another rider has it. */
function nameFor(offered, others) {
  const name = words.name(choice.age, isAdult(choice.age, offered));
  const taken = (text) => others.some((m) => m.label === text);
  let text = name;
  for (let n = 2; taken(text); n += 1) text = words.again(name, n);
  return text;
}

/** Whether a name was given by this page: then another may take its place. */
function isGiven(label, { ages }) {
  for (let age = ages[0]; age <= ages[1]; age += 1) {
    const name = words.name(age, age === ages[1]);
    if (label === name || Array.from({ length: MOST }, (_, i) => words.again(name, i + 2)).includes(label)) return true;
  }
  return false;
}

function put(label, own) {
  const { preset: start } = offer({ label, ...own });
  made.set(label, start);
  return start.mount;
}

/** The chosen numbers for the rider who is there; what the rider does stays. */
function replace() {
  const [before, ...others] = state.plan.riders;
  const offered = offer();
  const label = isGiven(before.label, offered) ? nameFor(offered, others) : before.label;
  const { posture, style, skill } = before.rider;
  edit((plan) => (plan.riders[0] = put(label, { posture, style, skill })), "structure");
}

function add() {
  const mount = put(nameFor(offer(), state.plan.riders), {});
  edit((plan) => changeRiders(plan, (riders) => riders.unshift(mount)), "structure");
}

function select(id, word, options, value, change) {
  const box = document.createElement("div");
  box.className = "field";
  const label = Object.assign(document.createElement("label"), { htmlFor: id, textContent: word });
  const list = Object.assign(document.createElement("select"), { id });
  list.append(...options.map(([key, text]) => new Option(text, key)));
  list.value = value;
  list.addEventListener("change", () => change(list.value));
  box.append(label, list);
  return box;
}

function button(text, id, disabled, act) {
  const button = Object.assign(document.createElement("button"), { type: "button", id, textContent: text, disabled });
  button.addEventListener("click", () => {
    act();
    // The panel was written anew: the same button is another now, and may be of no use any more.
    (document.querySelector(`#${id}:enabled`) ?? document.querySelector("#rider .riders input:checked")).focus();
  });
  return button;
}

/** What the choice gives, and where from. */
function preview({ preset: { mount, notes } }) {
  const line = (field, word, quantity) => {
    const note = notes.find((n) => n.field === field);
    return words.line(word, shown(get(mount, field), quantity), spread(note, quantity));
  };
  const texts = [line("rider.mass", words.mass, "mass"), line("rider.stature", words.stature, "length"), words.from];
  return texts.map((textContent) => Object.assign(document.createElement("p"), { className: "from", textContent }));
}

/** The panel; it is written anew by itself whenever something in it is chosen. */
export function startFrom() {
  const box = document.createElement("fieldset");
  box.className = "group preset";
  const show = () => box.replaceChildren(...panel(show));
  show();
  return box;
}

function panel(show) {
  const offered = offer();
  const { ages, wheels, preset: { fitting } } = offered;
  const set = (key, read = (v) => v) => (value) => {
    choice[key] = read(value);
    show();
    document.getElementById(`preset-${key}`).focus();
  };
  const years = Array.from({ length: ages[1] - ages[0] + 1 }, (_, i) => ages[0] + i);
  const legend = Object.assign(document.createElement("legend"), { textContent: words.legend });
  const actions = Object.assign(document.createElement("div"), { className: "actions" });
  actions.append(
    button(words.replace(state.plan.riders[0].label), "preset-replace", false, replace),
    button(words.add, "preset-add", state.plan.riders.length >= MOST, add),
  );
  return [
    legend,
    select("preset-age", words.age, years.map((age) => [age, words.years(age, isAdult(age, offered))]), choice.age, set("age", Number)),
    select("preset-sex", words.sex, Object.entries(words.sexes), choice.sex, set("sex")),
    select("preset-wheel", words.wheel, [["", words.fitting(spelt(fitting))], ...wheels.map((w) => [w, words.inches(spelt(w))])], choice.wheel ?? "", set("wheel", (v) => v || null)),
    select("preset-tread", words.tread, Object.entries(words.treads), choice.tread, set("tread")),
    ...preview(offered),
    actions,
  ];
}
