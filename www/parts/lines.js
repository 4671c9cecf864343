// The reader's own lines: kept by themselves after every change, listed, copied, opened, sent as files.

import { examples, link_to, open as openLink, open_file as openFile } from "../carryline.js";
import { state, choose, onChange, open, rideOf, tell, undo, redo } from "../state.js";
import { put, read } from "../device.js";
import { canRedo, canUndo, recall, remember } from "../history.js";
import { drop, fresh, here, keep, kept, onTaken, some, unread } from "../store.js";
import { unlessHeld } from "../finger.js";
import { steadily } from "../steady.js";
import { language } from "../language.js";
import { lines as words } from "../words.js";
import { compare } from "./drawing.js";
import { savePlan } from "./file.js";
import { inWords } from "../names.js";
import { make } from "./make.js";
import { emptyYard, newLine } from "./new_line.js";
import { say } from "./message.js";
import { place, reason } from "../wrong.js";

// How long an edit rests before it is kept, ms.
const REST = 300;

// Under what name a tab keeps at which address it left which line: the address follows an edit only after a while.
const LEFT = "carryline.left";

// Under what name it is kept for how many lines it was said that they cannot be read.
const TOLD = "carryline.unread";

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
  const links = [state.plan, ...(state.borrowed ? [] : [state.good])].map(link);
  dirty = !keep(here.id, state.plan, links);
  offer();
  if (dirty) say(words.full);
  unlessHeld(list);
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
  const before = entry.link[1];
  open(entry.plan, false, before && openLink(before).plan);
  recall(entry.id, entry.plan);
  show();
  list();
}

/** Opens a plan that is nobody's yet: it is kept once it is edited. */
export function openNew(plan, looking = false) {
  leave();
  here.id = null;
  here.taken = false;
  open(plan, looking);
  list();
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

/** Says, once in a tab, that lines are kept here which cannot be read. */
export function tellUnread() {
  const hidden = unread();
  if (!hidden || read("sessionStorage", TOLD) === hidden) return;
  put("sessionStorage", TOLD, hidden);
  say(words.unread(hidden));
}

/** Makes what is shown the reader's own. */
function copy(plan) {
  openNew(structuredClone(plan));
  later();
  save();
}

function button(does, name, act) {
  const made = make("button", { type: "button", data: { act: does } }, words[does]);
  made.setAttribute("aria-label", `${words[does]}: ${name}`);
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
  if (!own) act.append(button("open", name, () => openKept(entry)));
  act.append(button("copy", name, () => copy({ ...entry.plan, name: words.second(name) })));
  if (!own) act.append(button("compare", name, () => against(entry.plan)));
  if (!own) act.append(button("remove", name, () => remove(entry)));
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
    if (!Array.isArray(faults)) throw faults;
    const [{ field, why }] = faults;
    say(words.noFile([place(field, text), reason(why)].filter(Boolean).join(": "), field));
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
  const bare = make("button", { type: "button", data: { empty: "" } }, words.empty);
  bare.addEventListener("click", startEmpty);
  return make("div", { className: "starts" }, make("h3", {}, words.starts), make("p", { className: "actions" }, ...all, bare));
}

// The list of kept lines; what stands under it, which stays as it is: a form may be half filled in.
const rows = make("ul");
let below = null;

/** The lines as they are kept now. The focus stays at the line and the button that had it, or goes to what is next
 * to them. */
function list() {
  if (!document.getElementById("lines").open) return;
  const had = rows.contains(document.activeElement) && document.activeElement;
  const [line, act] = had ? [had.closest("li"), had.dataset.act] : [];
  const at = line ? [...rows.children].indexOf(line) : 0;
  const lines = kept();
  const all = lines.map(item);
  const hidden = unread(lines);
  const notes = [...(all.length ? [] : [words.none]), ...(hidden ? [words.unread(hidden)] : [])];
  rows.replaceChildren(...all, ...notes.map((note) => make("li", {}, note)));
  below ??= [files(), starts(), newLine(copy)];
  if (!box.contains(rows)) box.replaceChildren(rows, ...below);
  if (!had) return;
  const same = all.find((other) => other.dataset.line === line.dataset.line) ?? all[Math.min(at, all.length - 1)];
  (same?.querySelector(`[data-act="${act}"]`) ?? same?.querySelector("button"))?.focus({ preventScroll: true });
}

// Where somebody without a line of their own is led to one.
const begin = document.getElementById("begin");

const offer = () => steadily(() => (begin.hidden = state.looking || some()));

/** Goes to a part of the opened list, and to the first that can be done there. */
function lead(css) {
  const part = box.querySelector(css);
  part.scrollIntoView({ block: "start" });
  part.querySelector("input, button").focus({ preventScroll: true });
}

/** A yard with nothing on it yet, its first stretch open to go on from. */
function startEmpty() {
  copy(emptyYard());
  choose(0);
  document.querySelector("#features .feature")?.focus({ preventScroll: true });
}

// What a line of one's own may begin with.
const BEGINS = {
  answers: () => lead("#new-line"),
  example: () => lead(".starts"),
  empty: startEmpty,
};

function startOwn(event) {
  const { begin: how } = event.currentTarget.dataset;
  if (how !== "empty") document.getElementById("lines").open = true;
  list();
  BEGINS[how]();
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
  for (const way of begin.querySelectorAll("button")) way.addEventListener("click", startOwn);
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
