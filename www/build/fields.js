// Fields for what there is to build with: what is typed counts once it can be read, and is kept on the device.

import { get, set } from "../parts/path.js";
import { make } from "../parts/make.js";
import { accepted, parse, typed } from "../units.js";
import { reason } from "../wrong.js";
import { work } from "./work.js";

/** What is to be done after a change. */
let then = () => {};

export const onSupplies = (does) => (then = does);

/** After the focus has gone where it goes: fields are made anew. */
const changed = () => setTimeout(() => then());

let serial = 0;

const told = (box) => box.querySelector(".fault");

function tell(box, sentence) {
  const line = told(box);
  line.textContent = sentence;
  line.hidden = !sentence;
  const input = box.querySelector("input, select");
  if (sentence) input.setAttribute("aria-invalid", "true");
  else input.removeAttribute("aria-invalid");
}

function field(path, word, input) {
  const id = `${path}-told`;
  input.id = path;
  input.setAttribute("aria-describedby", id);
  return make("div", { className: "field", data: { field: path } }, make("label", { htmlFor: path }, word), input, make("p", { className: "fault", id, hidden: true }));
}

/** A field to be typed in: `take` takes what was typed, or throws a sentence. */
function line(path, word, value, take) {
  const input = make("input", { autocomplete: "off", spellcheck: false, value });
  const box = field(path, word, input);
  input.addEventListener("change", () => {
    try {
      take(input.value);
    } catch (sentence) {
      if (typeof sentence !== "string") throw sentence;
      return tell(box, sentence);
    }
    tell(box, "");
    changed();
  });
  return box;
}

/** A number with its unit. */
export const number = (path, word, quantity) =>
  line(path, word, typed(get(work.asked, path), quantity), (text) => set(work.asked, path, parse(text, quantity)));

/** Several numbers in one field, a semicolon between them. */
export function numbers(path, word, quantity) {
  const written = get(work.asked, path).map((v) => typed(v, quantity)).join("; ");
  const box = line(path, word, written, (text) => {
    const all = text.split(";").filter((one) => one.trim());
    set(work.asked, path, all.map((one) => parse(one, quantity)));
  });
  box.classList.add("list");
  return box;
}

/** One of several. */
export function choice(path, word, choices) {
  const select = make("select", {}, ...Object.entries(choices).map(([value, text]) => make("option", { value }, text)));
  select.value = get(work.asked, path);
  select.addEventListener("change", () => {
    set(work.asked, path, select.value);
    changed();
  });
  return field(path, word, select);
}

/** A field that stands for something else: `value` is its text, `take` takes what was typed, or throws a sentence. */
export const free = (word, value, take) => line(`free-${(serial += 1)}`, word, value, take);

export const begin = () => (serial = 0);

/** A fault as a sentence. */
const sentence = (fault) => [reason(fault.why), accepted(fault)].filter(Boolean).join("; ");

/** Says each fault at its field, or at the part of the supplies around it. */
export function tellFaults(all) {
  for (const box of document.querySelectorAll(".field[data-field]")) if (!told(box).hidden) tell(box, "");
  for (const fault of all) {
    for (let path = fault.field; path; path = path.replace(/[.[]?[^.[]*$/, "")) {
      const box = document.querySelector(`.field[data-field="${CSS.escape(path)}"]`);
      if (!box) continue;
      tell(box, sentence(fault));
      for (let at = box.closest("details"); at; at = at.parentElement.closest("details")) at.open = true;
      break;
    }
  }
}
