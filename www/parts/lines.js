// The reader's own lines: kept by themselves after every change, listed, copied, opened, sent as files.

import { examples, link_to, open_file as openFile } from "../carryline.js";
import { state, onChange, open, rideOf, tell, undo, redo } from "../state.js";
import { put, read } from "../device.js";
import { canRedo, canUndo, recall, remember } from "../history.js";
import { drop, fresh, here, keep, kept, onTaken, some } from "../store.js";
import { unlessHeld } from "../finger.js";
import { language } from "../language.js";
import { lines as words } from "../words.js";
import { compare } from "./drawing.js";
import { savePlan } from "./file.js";
import { inWords } from "../names.js";
import { make } from "./make.js";
import { newLine } from "./new_line.js";
import { say } from "./message.js";
import { reason } from "../wrong.js";

// How long an edit rests before it is kept, ms.
const REST = 300;

// Under what name a tab keeps at which address it left which line: the address follows an edit only after a while.
const LEFT = "carryline.left";

const page = document.documentElement;
const box = document.querySelector("#lines div");
const [undoButton, redoButton] = ["undo", "redo"].map((id) => document.getElementById(id));

let timer = 0;
let dirty = false;

const link = (plan) => `#${link_to(plan)}`;

/** Keeps what is edited, under a name of its own where another tab has taken the old one. */
function save() {
  clearTimeout(timer);
  if (!dirty || state.looking) return;
  if (here.taken) {
    here.taken = false;
    here.id = null;
    state.plan.name = words.second(state.plan.name);
    tell("name");
  }
  here.id ??= fresh();
  const links = [state.plan, state.good].map((plan) => plan && link(plan));
  dirty = !keep(here.id, state.plan, links);
  offer();
  if (dirty) say(words.full);
  if (document.getElementById("lines").open) unlessHeld(list);
}

/** Keeps what was done before another line is opened, or the page goes: the steps to it as well. */
function leave() {
  save();
  if (here.id) remember(here.id, state.plan);
}

/** The page goes. */
function gone() {
  leave();
  put("sessionStorage", LEFT, here.id && { id: here.id, hash: location.hash });
}

function later() {
  if (state.looking) return;
  dirty = true;
  clearTimeout(timer);
  timer = setTimeout(save, REST);
}

/** Opens a kept line. */
function openKept(entry) {
  leave();
  here.id = entry.id;
  here.taken = false;
  open(entry.plan);
  recall(entry.id, entry.plan);
  show();
}

/** Opens a plan that is nobody's yet: it is kept once it is edited. */
export function openNew(plan, looking = false) {
  leave();
  here.id = null;
  here.taken = false;
  open(plan, looking);
}

/** The line that was edited last, or the one an address belongs to; whether there is one. */
export function openOwn(hash) {
  const left = read("sessionStorage", LEFT);
  const all = kept();
  const known = (k) => k.link.includes(hash);
  const entry = hash ? (all.find(known) ?? all.find((k) => left?.hash === hash && k.id === left.id)) : all[0];
  if (entry) openKept(entry);
  return Boolean(entry);
}

/** Makes what is shown the reader's own. */
function copy(plan) {
  openNew(structuredClone(plan));
  later();
  save();
}

function button(text, name, act) {
  const made = make("button", { type: "button" }, text);
  made.setAttribute("aria-label", `${text}: ${name}`);
  made.addEventListener("click", act);
  return made;
}

/** Lays another line under this one, with its speeds in the table; null takes it away. */
function against(plan) {
  try {
    const riding = plan && rideOf(plan);
    state.against = plan && { name: plan.name || words.unnamed, jumps: riding.story().jumps };
    compare(riding ?? undefined);
  } catch (faults) {
    if (!Array.isArray(faults)) throw faults;
    say(words.faulty(plan.name));
  }
  document.getElementById("against").hidden = !state.against;
  document.querySelector("#against span").textContent = state.against ? words.comparedWith(state.against.name) : "";
  tell("against");
}

function item(entry) {
  const { name } = entry.plan;
  const own = entry.id === here.id;
  const label = make("span", { className: "line" }, make("b", {}, name || words.unnamed), " ", new Date(entry.saved).toLocaleString(language));
  if (own) label.append(" ", make("em", {}, words.here));
  const act = make("span", { className: "actions" });
  if (!own) act.append(button(words.open, name, () => openKept(entry)));
  act.append(button(words.copy, name, () => copy({ ...entry.plan, name: words.second(name) })));
  if (!own) act.append(button(words.compare, name, () => against(entry.plan)));
  if (!own) act.append(button(words.remove, name, () => remove(entry)));
  return make("li", { data: { line: entry.id } }, label, act);
}

/** Removes a line, with a way back. */
function remove(entry) {
  drop(entry.id);
  list();
  const back = make("button", { type: "button" }, words.bring);
  back.addEventListener("click", () => {
    keep(entry.id, entry.plan, entry.link);
    list();
    say("");
  });
  say(words.removed(entry.plan.name), back);
}

async function upload(file) {
  if (!file) return;
  const text = await file.text();
  try {
    // The simulator's own reader says what is wrong with a file, and fills in what it leaves open.
    copy(openFile(text));
  } catch (faults) {
    say(words.noFile(Array.isArray(faults) ? `${faults[0].field}: ${reason(faults[0].why)}` : String(faults)));
  }
}

function files() {
  const save = make("button", { type: "button" }, words.save);
  save.addEventListener("click", savePlan);
  const input = make("input", { type: "file", accept: ".json,application/json", className: "unseen", id: "plan-file" });
  input.addEventListener("change", () => upload(input.files[0]));
  const label = make("label", { htmlFor: "plan-file", className: "button" }, words.load);
  return make("p", { className: "actions" }, save, input, label);
}

/** The lines that come with the page, each to be copied. */
function starts() {
  const all = examples().map(inWords).map((plan) => {
    const made = make("button", { type: "button", data: { example: plan.name } }, plan.name);
    made.addEventListener("click", () => copy(plan));
    return made;
  });
  return make("div", { className: "starts" }, make("h3", {}, words.starts), make("p", { className: "actions" }, ...all));
}

// The form for a line of one's own, and whether somebody has begun to fill it in.
let form = null;
let begun = false;

/** The form: one that is being filled in stays as it is. */
function formNow() {
  if (begun || form?.contains(document.activeElement)) return form;
  form = newLine((plan) => {
    begun = false;
    copy(plan);
  });
  form.addEventListener("input", () => (begun = true));
  return form;
}

function list() {
  const all = kept();
  const rows = all.length ? make("ul", {}, ...all.map(item)) : make("p", {}, words.none);
  const { activeElement } = document;
  box.replaceChildren(rows, files(), starts(), formNow());
  // What is taken out and put back loses the focus.
  if (form.contains(activeElement)) activeElement.focus({ preventScroll: true });
}

// Where somebody without a line of their own is led to one.
const begin = document.getElementById("begin");

const offer = () => (begin.hidden = state.looking || some());

function toForm() {
  form.scrollIntoView({ block: "start" });
  form.querySelector("input").focus({ preventScroll: true });
}

function startOwn() {
  const lines = document.getElementById("lines");
  if (lines.open) return toForm();
  // The list comes as it opens.
  lines.addEventListener("toggle", toForm, { once: true });
  lines.open = true;
}

function show() {
  offer();
  page.toggleAttribute("data-looking", state.looking);
  document.getElementById("plan-name").readOnly = state.looking;
  undoButton.disabled = !canUndo();
  redoButton.disabled = !canRedo();
}

function key(event) {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
  // A text being typed has an undo of its own.
  if (event.target.closest("input:not([type])") || state.looking) return;
  event.preventDefault();
  if (event.shiftKey) redo();
  else undo();
}

export function startLines() {
  undoButton.addEventListener("click", undo);
  redoButton.addEventListener("click", redo);
  document.addEventListener("keydown", key);
  document.getElementById("keep").addEventListener("click", () => {
    copy(state.plan);
    document.getElementById("plan-name").focus();
  });
  document.getElementById("lines").addEventListener("toggle", list);
  begin.querySelector("button").addEventListener("click", startOwn);
  document.querySelector("#against button").addEventListener("click", () => against(null));
  document.addEventListener("visibilitychange", gone);
  window.addEventListener("pagehide", gone);
  onTaken(() => say(words.taken));
  let opening = false;
  let seen = null;
  onChange((what) => {
    if (what === "opened") opening = true;
    if (!["plan", "structure", "name"].includes(what)) return;
    // What was just opened is no edit, and what is only written anew is none either.
    if (!opening && state.plan !== seen) later();
    opening = false;
    seen = state.plan;
    show();
  });
}
