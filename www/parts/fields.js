// Fields: a number with − and +, a choice, a switch. Each change rides at once.

import { state, edit } from "../state.js";
import { parse, stepped, typed } from "../units.js";
import { act } from "../words.js";
import { hide, make as element, say } from "./make.js";
import { get, set } from "./path.js";

let serial = 0;

/** Puts a value into the plan. What was seen otherwise than it was carried to the plan counts anew. */
function put(plan, path, value) {
  set(plan, path, value);
  const seen = /^seen\[(\d+)\]/.exec(path);
  if (seen) delete plan.seen[seen[1]].carried;
}

/** Says something below a field, or nothing. */
function tell(below, text) {
  say(below, text || "");
  hide(below, !text);
}

/**
 * A group of fields under a heading, for the part of the plan at `base`. Where `origin(path, quantity)`
 * is given, its text stands under the field: where the value comes from.
 */
export function group(base, [heading, fields], origin) {
  const box = element("fieldset", { className: "group" });
  if (heading) box.append(element("legend", {}, heading));
  for (const field of fields) box.append(make(base, field, origin));
  return box;
}

function make(base, [inner, word, kind, more = {}], origin) {
  const path = base ? `${base}.${inner}` : inner;
  const box = element("div", { className: "field" });
  box.dataset.field = path;
  const id = `field-${(serial += 1)}`;
  const told = element("p", { className: "fault", id: `${id}-told`, hidden: true });
  const caution = element("p", { className: "caution", hidden: true });
  const from = element("p", { className: "from", id: `${id}-from`, hidden: true });
  if (kind.toggle !== undefined) toggle(box, path, word, kind.toggle, id);
  else if (kind.choices) choice(box, path, word, kind, id);
  else number(box, path, word, kind, more.step, id);
  box.querySelector("input, select").setAttribute("aria-describedby", `${told.id} ${from.id}`);
  box.append(told, caution, from);
  const shownBefore = box.sync;
  box.sync = () => {
    const value = get(state.plan, path);
    const gone = value === undefined && kind.toggle === undefined;
    hide(box, gone);
    if (gone) return;
    shownBefore(value);
    const risk = (more.caution ?? kind.caution)?.(value, base ? get(state.plan, base) : state.plan);
    tell(caution, risk);
    tell(from, origin?.(inner, kind));
  };
  box.sync();
  return box;
}

function number(box, path, word, quantity, finer, id) {
  box.dataset.quantity = quantity;
  const input = element("input", { id, autocomplete: "off", spellcheck: false, inputMode: "text" });
  const turn = (direction) => () => {
    const value = stepped(get(state.plan, path), quantity, direction, finer);
    edit((plan) => put(plan, path, value));
    box.sync();
  };
  const button = (sign, name, direction) => {
    const made = element("button", { type: "button", className: "step", ariaLabel: name }, sign);
    made.addEventListener("click", turn(direction));
    return made;
  };
  input.addEventListener("input", () => take(box, input, path, quantity, false));
  input.addEventListener("change", () => take(box, input, path, quantity, true));
  input.addEventListener("keydown", (event) => {
    const direction = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (!direction) return;
    event.preventDefault();
    turn(direction)();
    input.value = typed(get(state.plan, path), quantity);
  });
  const row = element("div", { className: "stepper" }, button("−", act.less(word), -1), input, button("+", act.more(word), 1));
  box.append(element("label", { htmlFor: id }, word), row);
  // The value written last, and its text: fields are made anew where the units change.
  let last, text;
  box.sync = (value) => {
    if (document.activeElement === input || box.dataset.unread) return;
    if (value !== last) [last, text] = [value, typed(value, quantity)];
    if (input.value !== text) input.value = text;
  };
}

/** Takes what was typed. While typing, what cannot be read yet is left alone. */
function take(box, input, path, quantity, done) {
  let value;
  try {
    value = parse(input.value, quantity);
  } catch (sentence) {
    if (done) {
      box.dataset.unread = sentence;
      box.dispatchEvent(new CustomEvent("unread", { bubbles: true }));
    }
    return;
  }
  delete box.dataset.unread;
  if (value !== get(state.plan, path)) edit((plan) => put(plan, path, value));
  if (done) input.value = typed(get(state.plan, path), quantity);
  box.dispatchEvent(new CustomEvent("unread", { bubbles: true }));
}

/** One of several; their values are texts, or whole numbers. */
function choice(box, path, word, { choices, whole }, id) {
  const select = element("select", { id });
  for (const [value, text] of Object.entries(choices)) select.append(element("option", { value }, text));
  select.addEventListener("change", () => edit((plan) => put(plan, path, whole ? Number(select.value) : select.value)));
  box.append(element("label", { htmlFor: id }, word), select);
  box.sync = (value) => (select.value = value);
}

/** Present or absent; or true or false, where `fresh` is true. */
function toggle(box, path, word, fresh, id) {
  const input = element("input", { id, type: "checkbox" });
  const off = fresh === true ? false : undefined;
  input.addEventListener("change", () => {
    const value = input.checked ? structuredClone(fresh) : off;
    edit((plan) => set(plan, path, value));
  });
  box.classList.add("switch");
  box.append(input, element("label", { htmlFor: id }, word));
  box.sync = (value) => (input.checked = value !== undefined && value !== false);
}
