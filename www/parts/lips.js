// The table: each lip, its speed, and how the jump went; and the ride told in a sentence.

import { state, onChange, choose, features } from "../state.js";
import { fixed, list } from "../numbers.js";
import { apart, rough, shown } from "../units.js";
import { jumpNames, names } from "../names.js";
import * as words from "../words.js";
import { say } from "./make.js";
import { explain, explained } from "./terms.js";
import { more, spare } from "./window.js";

const body = document.querySelector("#lips tbody");
const told = document.getElementById("told");

const NOTHING = "–";

// A length that is written as nothing is neither short nor past, m.
const NOUGHT = 0.025;

// Equivalent fall height beyond which a landing is called hard, m: the lower end of what published
// designs aim at (Hubbard 2009, J. ASTM Int. 6; McNeil, Hubbard and Swedberg 2012), as children
// deserve.
const HARD = 0.5;

function cell(row, what, ...content) {
  const td = document.createElement("td");
  td.dataset.what = what;
  td.setAttribute("role", "cell");
  td.append(...content);
  row.append(td);
}

function figure(value) {
  if (value == null) return [NOTHING];
  const [number, unit] = apart(value, "speed");
  const big = document.createElement("b");
  big.textContent = number;
  return [big, ` ${unit}`];
}

function landing(jump) {
  const { rear_past_knuckle: rear, front_past_knuckle: front } = jump;
  if (rear == null || front == null) return NOTHING;
  const length = (metres) => rough(Math.abs(metres));
  return words.wheels(length(rear), rear < -NOUGHT, length(front), front < -NOUGHT);
}

const degrees = (rad) => Math.round((rad * 180) / Math.PI);

/** The range of a lip's speed; nothing until it is known. */
function range(spread) {
  if (spread?.slowest == null) return "";
  return words.range(apart(spread.slowest, "speed")[0], ...apart(spread.fastest, "speed"));
}

/** How a jump went, in words. */
function how(jump) {
  const past = jump.rear_past_knuckle;
  const decked = features(state.good)[jump.feature]?.decked;
  const content = explained(words.how[jump.how](past == null ? null : rough(-past, Math.ceil), decked));
  if (jump.fall_height > HARD) {
    const caution = document.createElement("span");
    caution.className = "caution";
    caution.textContent = words.hard(rough(jump.fall_height, Math.ceil));
    content.push(caution);
  }
  const spread = state.study.spreads?.[jump.lip];
  if (spread) {
    const tries = document.createElement("span");
    tries.className = "tries";
    tries.append(...explained(words.tries(spread)));
    content.push(tries);
  }
  return content;
}

function row(jump, name) {
  const tr = document.createElement("tr");
  tr.dataset.lip = jump.lip;
  tr.dataset.feature = jump.feature;
  tr.dataset.how = jump.how;
  tr.setAttribute("role", "row");
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = name;
  button.addEventListener("click", () => choose(Number(tr.dataset.feature)));
  const th = document.createElement("th");
  th.scope = "row";
  th.setAttribute("role", "rowheader");
  th.append(button);
  tr.append(th);
  const maybe = (value, text) => (value == null ? NOTHING : text(value));
  cell(tr, "speed", ...figure(jump.speed));
  cell(tr, "range", range(state.study.spreads?.[jump.lip]));
  cell(tr, "exit", maybe(jump.exit_angle, (angle) => words.degrees(degrees(angle))));
  cell(tr, "airtime", maybe(jump.airtime, (time) => words.seconds(fixed(time, 2))));
  cell(tr, "landing", ...explained(landing(jump)));
  cell(tr, "how", ...how(jump));
  return tr;
}

/** What is known beside, in a row of its own. */
function below(jump) {
  const tr = document.createElement("tr");
  tr.className = "more";
  tr.setAttribute("role", "row");
  const { impacts, others } = state.story;
  cell(tr, "more", more(jump, state.study, impacts.find((i) => i.lip === jump.lip), others));
  tr.firstChild.colSpan = 7;
  explain(tr);
  return tr;
}

function where(x, called) {
  const { features } = state.story;
  const i = features.findIndex((f) => x >= f.from && x <= f.to);
  return called[i] ?? shown(x, "length");
}

function ending(called) {
  const { outcome, events, duration } = state.story;
  const who = state.good.riders[0].label;
  const last = (kind) => events.findLast((e) => e.kind === kind);
  const [stall, crash] = [last("rolled_back"), last("crashed")];
  if (outcome === "crashed" && crash) return words.told.crashed(who, where(crash.x, called), words.crashes[crash.why]);
  if (outcome === "stalled" && stall) return words.told.stalled(who, where(stall.x, called), shown(stall.missing, "speed"));
  if (outcome === "timed_out") return words.told.timed_out(who);
  if (outcome === "broken_off") return words.told.broken_off(who, fixed(duration, 1));
  const rolls = state.story.ending.how === "leaves";
  if (rolls) return words.told.leaves(who, fixed(duration, 1), shown(state.story.ending.speed, "speed"));
  return words.told.stands(who, fixed(duration, 1));
}

/** How sure the line is, once the what-ifs are known: the jump that is clean in the fewest of them, and of several
 * such the one with the least to spare. */
function sureness(jumps, name) {
  const { spreads, windows } = state.study;
  const known = jumps.filter((jump) => spreads?.[jump.lip]);
  if (!known.length || known.length < jumps.length) return "";
  const clean = (jump) => spreads[jump.lip].clean;
  const left = (jump) => (windows && spare(windows[jump.lip], jump.speed)) ?? Infinity;
  const least = known.reduce((a, b) => (clean(b) < clean(a) || (clean(b) === clean(a) && left(b) < left(a)) ? b : a));
  const { tried } = spreads[least.lip];
  if (clean(least) < tried) return words.leastSure(name(least), clean(least), tried);
  return known.length > 1 ? words.sureOfAll(tried) : words.sureOfIt(tried);
}

/** How the line ends behind its last jump: a row of its own. */
function last(called) {
  const { ending } = state.story;
  const tr = document.createElement("tr");
  tr.className = "end";
  tr.dataset.ending = ending.how;
  tr.setAttribute("role", "row");
  const th = document.createElement("th");
  th.scope = "row";
  th.setAttribute("role", "rowheader");
  th.textContent = called.at(-1) ?? "";
  tr.append(th);
  cell(tr, "end", ending.how === "leaves" ? shown(ending.speed, "speed") : NOTHING);
  const length = (metres) => shown(metres, "length");
  const said = {
    stands: () => words.ending.stands(length(Math.max(ending.left, 0))),
    leaves: () => words.ending.leaves(state.study.missing && length(state.study.missing)),
    never: () => words.ending.never,
  };
  const told = document.createElement("span");
  if (ending.how === "leaves") told.className = "caution";
  told.textContent = said[ending.how]();
  cell(tr, "stop", told);
  tr.lastChild.colSpan = 5;
  return tr;
}

/** What to look at first. */
function verdict(jumps, name) {
  if (!jumps.length) return words.noJumps;
  const wrong = jumps.filter((jump) => jump.how !== "clean" && jump.how !== "not_reached");
  if (wrong.length) return words.look(list(wrong.map(name)));
  return jumps.every((jump) => jump.how === "clean") ? words.allClean(jumps.length) : "";
}

// While something is dragged: how often the table changes, ms, as faster is not read; and when it did last.
const TELL = 300;
let shownAt = 0;
let waiting = 0;

/** Puts what is new of a row in its place: what has the focus keeps it, and while something is dragged most of the
 * table stays as it was. */
function renew(made, i) {
  const row = body.rows[i];
  Object.assign(row.dataset, made.dataset);
  [...made.children].forEach((cell, j) => {
    if (!cell.isEqualNode(row.children[j])) row.children[j].replaceWith(cell);
  });
}

/** Shows the table, or what is new of it. */
function show() {
  clearTimeout(waiting);
  shownAt = performance.now();
  const { jumps } = state.story;
  const called = names(state.good);
  const name = jumpNames(state.good);
  const rows = jumps.flatMap((jump) => [row(jump, name(jump)), below(jump)]);
  if (state.story.features.length) rows.push(last(called));
  if (rows.length === body.rows.length) rows.forEach(renew);
  else body.replaceChildren(...rows);
  say(told, [ending(called), verdict(jumps, name), sureness(jumps, name)].filter(Boolean).join(" "));
}

/** Shows what was ridden while something is dragged, at once or as soon as it will be read. */
function follow() {
  clearTimeout(waiting);
  const rest = shownAt + TELL - performance.now();
  if (rest > 0) waiting = setTimeout(follow, rest);
  else show();
}

export function startLips() {
  onChange((what) => {
    if (what === "ridden") follow();
    else if (state.story && ["plan", "structure", "study", "against", "others"].includes(what)) show();
  });
}
