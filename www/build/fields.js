// Fields for what there is to build with: what is typed counts once it can be read, and is kept on the device.

import { get, set } from "../parts/path.js";
import { make } from "../parts/make.js";
import { limit, parse, typed } from "../units.js";
import { faults } from "../words.js";
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

/** A number with its unit. `read` and `write` are for what is no number of the supplies itself. */
export function number(path, word, quantity, { from = (v) => v, to = (v) => v } = {}) {
  const input = make("input", { autocomplete: "off", spellcheck: false, value: typed(from(get(work.asked, path)), quantity) });
  const box = field(path, word, input);
  input.addEventListener("change", () => {
    try {
      set(work.asked, path, to(parse(input.value, quantity)));
    } catch (sentence) {
      if (typeof sentence !== "string") throw sentence;
      return tell(box, sentence);
    }
    tell(box, "");
    changed();
  });
  return box;
}

/** Several numbers in one field, a semicolon between them. */
export function numbers(path, word, quantity) {
  const text = () => get(work.asked, path).map((v) => typed(v, quantity)).join("; ");
  const input = make("input", { autocomplete: "off", spellcheck: false, value: text() });
  const box = field(path, word, input);
  box.classList.add("list");
  input.addEventListener("change", () => {
    try {
      const all = input.value.split(";").filter((one) => one.trim());
      set(work.asked, path, all.map((one) => parse(one, quantity)));
    } catch (sentence) {
      if (typeof sentence !== "string") throw sentence;
      return tell(box, sentence);
    }
    tell(box, "");
    changed();
  });
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

/** A field that stands for something else: `read` gives its text, `take` what was typed, or throws a sentence. */
export function free(word, value, take) {
  const input = make("input", { autocomplete: "off", spellcheck: false, value });
  const box = field(`free-${(serial += 1)}`, word, input);
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

export const begin = () => (serial = 0);

/** A fault as a sentence. */
function sentence({ why, quantity, least, most }) {
  const [low, high] = [least, most].map((value, i) => value != null && limit(value, quantity, ["least", "most"][i]));
  const accepted = low && high ? faults.between(low, high) : low ? faults.least(low) : high ? faults.most(high) : "";
  return [reason(why), accepted].filter(Boolean).join("; ");
}

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
