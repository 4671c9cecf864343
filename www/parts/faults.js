// What is wrong, said at the field, in the reader's units, with what would be accepted.

import { state, onChange, choose, features } from "../state.js";
import { accepted, shown, typed } from "../units.js";
import { names } from "../names.js";
import { faults as words, readings } from "../words.js";
import { reason } from "../wrong.js";
import { make } from "./make.js";

const summary = document.getElementById("faults");
// The same where somebody looks who is far from the field: over the drawing, and before the verdict.
const wrong = document.getElementById("wrong");
const unready = document.getElementById("unready");

// So many features are named that could be shortened, the longest first.
const SHORTENED = 2;

/** A fault as a sentence. */
function sentence(fault) {
  const { quantity } = fault;
  const row = /surveyed(?:\.points)?\[(\d+)\]/.exec(fault.field)?.[1];
  const why = (row ? readings.at(Number(row) + 1) : "") + reason(fault.why);
  const parts = [why[0].toUpperCase() + why.slice(1)];
  if (fault.given != null) parts.push(words.given(typed(fault.given, quantity)));
  parts.push(accepted(fault));
  return `${parts.filter(Boolean).join("; ")}.`;
}

/** The box of the field, or of the nearest part of the plan around it. */
function boxOf(field) {
  for (let path = field; path; path = path.replace(/[.[]?[^.[]*$/, "")) {
    const boxes = document.querySelectorAll(`[data-field="${CSS.escape(path)}"]`);
    const box = [...boxes].find((b) => !b.hidden && !b.classList.contains("switch")) ?? boxes[0];
    if (box) return box;
  }
  return null;
}

function clear() {
  for (const box of document.querySelectorAll("[data-field]")) {
    const told = box.querySelector(".fault");
    told.hidden = true;
    told.textContent = "";
    box.querySelector("input, select, textarea").removeAttribute("aria-invalid");
  }
  for (const item of document.querySelectorAll("#features .faulty")) item.classList.remove("faulty");
}

/** Opens all that a field lies in. */
function uncover(box) {
  for (let at = box.closest("details"); at; at = at.parentElement.closest("details")) at.open = true;
}

function mark(box, text) {
  const told = box.querySelector(".fault");
  told.textContent = told.textContent ? `${told.textContent} ${text}` : text;
  told.hidden = false;
  box.querySelector("input, select, textarea").setAttribute("aria-invalid", "true");
  uncover(box);
}

/** What a fault is about: a feature, or another rider than the first. */
function about(fault, called) {
  const feature = /^line\.features\[(\d+)\]/.exec(fault.field)?.[1];
  const rider = /^riders\[([1-9]\d*)\]/.exec(fault.field)?.[1];
  return { index: feature, name: called[feature] ?? state.plan.riders[rider]?.label };
}

/** A line in the summary, with a way to the feature where its fields are not in sight. */
function line(fault, called) {
  const p = document.createElement("p");
  const { index, name } = about(fault, called);
  p.textContent = name ? `${name}: ${sentence(fault)} ` : `${sentence(fault)} `;
  if (index && name && state.chosen !== Number(index)) {
    const go = document.createElement("button");
    go.type = "button";
    go.textContent = words.show(name);
    go.addEventListener("click", () => choose(Number(index)));
    p.append(go);
  }
  return p;
}

/** Goes to the field of a fault that is no feature's. */
function goTo(field) {
  const box = boxOf(field);
  if (!box) return;
  uncover(box);
  box.querySelector("input, select, textarea").focus();
}

/** Level stretches that could be shorter, the longest first, as their places in the line. */
function spare() {
  const all = features(state.plan).map((feature, i) => [feature, i]);
  const level = all.filter(([{ kind }]) => kind === "flat" || kind === "run_out");
  return level.sort(([a], [b]) => b.length - a.length).slice(0, SHORTENED).map(([, i]) => i);
}

/** A fault in a sentence for who looks at the ride, and ways to what can be changed: each a word and what it does. */
function brief(fault, called) {
  const { index, name } = about(fault, called);
  const longer = fault.field === "yard.length" && fault.least != null;
  if (longer && features(state.plan).length) {
    const [used, has, over] = [fault.least, fault.given, fault.least - fault.given].map((v) => shown(v, "length"));
    return [words.tooLong(used, has, over), spare().map((i) => [words.shorten(called[i]), () => choose(i)])];
  }
  const said = name ? `${name}: ${sentence(fault)}` : sentence(fault);
  const go = index ? () => choose(Number(index)) : () => goTo(fault.field);
  return [said, [[index ? words.show(name) : words.go, go]]];
}

/** Says in sight that the plan cannot be ridden, and where it can be mended. */
function showWrong(called) {
  const [fault] = state.faults;
  document.documentElement.toggleAttribute("data-unready", !!fault);
  wrong.hidden = unready.hidden = !fault;
  if (!fault) return;
  const [said, ways] = brief(fault, called);
  const buttons = ways.map(([word, go]) => {
    const button = make("button", { type: "button" }, word);
    button.addEventListener("click", go);
    return button;
  });
  wrong.replaceChildren(make("p", {}, words.unready(said)), make("div", {}, ...buttons));
  unready.textContent = `${words.unready(said)} ${words.before}`;
}

// Whether a fault is being told.
let telling = false;

function show() {
  const unread = document.querySelectorAll("[data-unread]");
  if (!telling && !state.faults.length && !unread.length) return;
  clear();
  for (const box of unread) mark(box, box.dataset.unread);
  const called = names(state.plan);
  const lines = [];
  for (const fault of state.faults) {
    const { index } = about(fault, called);
    document.querySelector(`#features [data-feature="${index}"]`)?.classList.add("faulty");
    const box = boxOf(fault.field);
    if (box) mark(box, sentence(fault));
    lines.push(line(fault, called));
  }
  if (lines.length) lines.push(Object.assign(document.createElement("p"), { textContent: words.held }));
  summary.replaceChildren(...lines);
  showWrong(called);
  telling = lines.length > 0 || unread.length > 0;
}

export function startFaults() {
  onChange((what) => {
    if (!["frame", "moment", "clock"].includes(what)) show();
  });
  document.addEventListener("unread", show);
}
