// The table: each lip, its speed, and how the jump went; and the ride told in a sentence.

import { state, onChange, choose } from "../state.js";
import { apart, shown } from "../units.js";
import { names } from "../names.js";
import * as words from "../words.js";

const body = document.querySelector("#lips tbody");
const told = document.getElementById("told");

const NOTHING = "–";

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

function place(metres) {
  const text = shown(Math.abs(metres), "length");
  return metres < 0 ? words.short(text) : words.past(text);
}

function landing(jump) {
  if (jump.rear_past_knuckle == null) return NOTHING;
  return words.wheels(place(jump.rear_past_knuckle), place(jump.front_past_knuckle));
}

export function how(jump) {
  const by = jump.rear_past_knuckle == null ? NOTHING : shown(-jump.rear_past_knuckle, "length");
  return words.how[jump.how](by);
}

function row(jump, name) {
  const tr = document.createElement("tr");
  tr.dataset.lip = jump.lip;
  tr.dataset.how = jump.how;
  tr.setAttribute("role", "row");
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = name;
  button.addEventListener("click", () => choose(jump.feature));
  const th = document.createElement("th");
  th.scope = "row";
  th.setAttribute("role", "rowheader");
  th.append(button);
  tr.append(th);
  const maybe = (value, text) => (value == null ? NOTHING : text(value));
  cell(tr, "speed", ...figure(jump.speed));
  cell(tr, "exit", maybe(jump.exit_angle, words.degrees));
  cell(tr, "airtime", maybe(jump.airtime, words.seconds));
  cell(tr, "landing", landing(jump));
  cell(tr, "how", how(jump));
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
  return words.told.finished(who, duration.toFixed(1));
}

function show() {
  const { jumps } = state.story;
  const called = names(state.good);
  const name = (jump) => called[jump.feature] ?? words.numbered("jump", jump.lip + 1);
  body.replaceChildren(...jumps.map((jump) => row(jump, name(jump))));
  told.textContent = jumps.length ? ending(called) : `${ending(called)} ${words.noJumps}`;
}

export function startLips() {
  onChange((what) => {
    if (state.story && (what === "plan" || what === "structure")) show();
  });
}
