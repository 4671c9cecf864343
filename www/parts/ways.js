// The string along the page: a peg leads to each part of it, a bead shows where one is, and while fields are open a
// tag tells how the jump goes that they are about.

import { state, onChange } from "../state.js";
import { jumpNames } from "../names.js";
import { shown } from "../units.js";
import { howShort, noJumps, ways as words } from "../words.js";
import { hide, make, say } from "./make.js";

const strip = document.getElementById("ways");
const tag = document.getElementById("tag");
const pegs = [...strip.querySelectorAll("[data-way]")];
const bead = strip.querySelector("i");
const plan = document.getElementById("plan");

const part = (peg) => document.getElementById(peg.dataset.way);

/** Goes to a part of the page, with the focus: keys and readers go on from there. */
function go(peg) {
  // The ride is on top of all, and its drawing takes the keys that move it.
  const ride = peg.dataset.way === "ride";
  if (ride) scrollTo(0, 0);
  else part(peg).scrollIntoView({ block: "start" });
  (ride ? document.getElementById("drawing") : part(peg)).focus({ preventScroll: true });
}

/** The pegs that lead somewhere: a line that is only looked at has no plan. */
const leading = () => pegs.filter((peg) => !state.looking || peg.dataset.way !== "plan");

/** How far each part begins under where going to it would bring it, px, with its peg's place on the string; without
 * what stands beside the others and scrolls with none. */
function begins() {
  const kept = parseFloat(getComputedStyle(document.documentElement).scrollPaddingTop) || 0;
  const lane = document.getElementById("result").getBoundingClientRect().left;
  const all = leading().map((peg, i) => {
    const { top, left } = part(peg).getBoundingClientRect();
    return peg.dataset.way === "ride" ? [i, -scrollY, lane] : [i, top - kept, left];
  });
  return all.filter(([, , left]) => left <= lane);
}

/** How far along the string one is: whole where a part begins. */
function along() {
  const all = begins();
  // The bottom of the page is the end of its last part.
  if (scrollY > 0 && scrollY + innerHeight >= document.documentElement.scrollHeight - 1) return all.at(-1)[0];
  const last = Math.max(all.findLastIndex(([, under]) => under <= 1), 0);
  const [[i, passed], next] = [all[last], all[last + 1]];
  return next ? i + ((next[0] - i) * Math.max(-passed, 0)) / (next[1] - passed) : i;
}

let waiting = 0;

/** Puts the bead where one is, once a frame. */
function follow() {
  waiting ||= requestAnimationFrame(() => {
    waiting = 0;
    const at = along();
    bead.style.setProperty("--at", at.toFixed(2));
    const here = leading()[Math.floor(at + 0.01)];
    for (const peg of pegs) {
      if (peg === here) peg.setAttribute("aria-current", "true");
      else peg.removeAttribute("aria-current");
    }
  });
}

/** The jump that the open fields are about: the chosen one, or the next behind what was chosen; of a whole plan the
 * first that is not clean. */
function meant({ jumps }) {
  if (state.chosen != null) return jumps.find((jump) => jump.feature >= state.chosen) ?? jumps.at(-1);
  return jumps.find((jump) => jump.how !== "clean") ?? jumps[0];
}

const editing = () => !state.looking && (state.chosen != null || document.activeElement?.closest("#more"));

function hang() {
  hide(tag, !state.story || !editing());
  if (tag.hidden) return;
  const jump = meant(state.story);
  tag.dataset.how = state.faults.length ? "unready" : (jump?.how ?? "");
  if (state.faults.length) return say(tag, words.unready);
  if (!jump) return say(tag, noJumps);
  const name = jumpNames(state.good)(jump);
  say(tag, words.jump(name, jump.speed == null ? "" : shown(jump.speed, "speed"), howShort[jump.how]));
}

/** From the tag to all that is known of the jump, or to what is wrong with the plan. */
function read() {
  const jump = meant(state.story);
  const there = state.faults.length
    ? document.querySelector("#wrong button")
    : document.querySelector(`#lips [data-lip="${jump?.lip}"] button`);
  (there ?? document.getElementById("told")).scrollIntoView({ block: "start" });
  there?.focus({ preventScroll: true });
}

/** Keeps the string over a keyboard that lies over the page, and the field in sight that is typed into. */
function lift() {
  const { height, offsetTop, scale } = visualViewport;
  // Where the page was drawn nearer by two fingers, no keyboard is meant.
  const under = scale > 1.01 ? 0 : Math.max(innerHeight - height - offsetTop, 0);
  strip.style.setProperty("--lift", `${Math.round(under)}px`);
  const { activeElement } = document;
  if (!under || !plan.contains(activeElement)) return;
  const over = activeElement.getBoundingClientRect().bottom + 8 - strip.getBoundingClientRect().top;
  if (over > 0) scrollBy(0, over);
}

/** Ways to what has a heading of its own in the longest part of the page. */
function headings() {
  const all = [...document.querySelectorAll("#means > section")].map((section) => {
    const way = make("button", { type: "button", data: { to: section.id } }, section.querySelector("h2").textContent);
    way.addEventListener("click", () => {
      section.tabIndex = -1;
      section.scrollIntoView({ block: "start" });
      section.focus({ preventScroll: true });
    });
    return way;
  });
  document.getElementById("headings").replaceChildren(...all);
}

export function startWays() {
  headings();
  for (const peg of pegs) peg.addEventListener("click", () => go(peg));
  tag.addEventListener("click", read);
  addEventListener("scroll", follow, { passive: true });
  addEventListener("resize", follow);
  // The tools under the string take more than one row where the type is large.
  const tools = document.getElementById("controls");
  new ResizeObserver(() => document.documentElement.style.setProperty("--tools", `${tools.offsetHeight}px`)).observe(tools);
  visualViewport?.addEventListener("resize", lift);
  visualViewport?.addEventListener("scroll", lift);
  plan.addEventListener("focusin", hang);
  plan.addEventListener("focusout", () => setTimeout(hang));
  onChange((what) => {
    if (!["plan", "structure", "chosen", "ridden", "left", "opened"].includes(what)) return;
    hang();
    follow();
  });
}
