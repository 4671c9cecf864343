// How the yard falls, said as a builder measures it: so much from start to end.

import { state, edit } from "../state.js";
import { parse, shown, typed, stepped } from "../units.js";
import { fields, act } from "../words.js";

/** The field for an even yard; none where the ground was surveyed. */
export function fall() {
  if (state.plan.yard.lie.grade === undefined) return [];
  const box = document.createElement("div");
  box.className = "field";
  box.dataset.field = "yard.lie.grade";
  box.innerHTML = `<label for="yard-fall"></label><div class="stepper"><button type="button" class="step">−</button>
    <input id="yard-fall" autocomplete="off" aria-describedby="yard-fall-told"><button type="button" class="step">+</button></div>
    <p class="fault" id="yard-fall-told" hidden></p>`;
  const [less, more] = box.querySelectorAll("button");
  const input = box.querySelector("input");
  box.querySelector("label").textContent = fields.fall;
  less.ariaLabel = act.less(fields.fall);
  more.ariaLabel = act.more(fields.fall);
  const length = () => state.plan.yard.length;
  const value = () => -state.plan.yard.lie.grade * length();
  const put = (metres) => edit((plan) => (plan.yard.lie.grade = -metres / length()));
  const turn = (direction) => () => {
    put(stepped(value(), "length", direction, 2));
    input.value = shown(value(), "length");
  };
  less.addEventListener("click", turn(-1));
  more.addEventListener("click", turn(1));
  input.addEventListener("change", () => {
    try {
      put(parse(input.value, "length"));
      delete box.dataset.unread;
      input.value = typed(value(), "length");
    } catch (sentence) {
      box.dataset.unread = sentence;
    }
    box.dispatchEvent(new CustomEvent("unread", { bubbles: true }));
  });
  box.sync = () => {
    if (document.activeElement !== input) input.value = shown(value(), "length");
  };
  box.sync();
  return [box];
}
