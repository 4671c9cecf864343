// The ground of the yard as readings: two columns, typed or pasted from a spreadsheet.

import { state, edit, onChange } from "../state.js";
import { plain } from "../units.js";
import { readings as words } from "../words.js";
import { columns, readPairs } from "./columns.js";
import { saveRows } from "./file.js";
import { noRow } from "../wrong.js";
import { make } from "./make.js";

// Most rows whose faults are told at once.
const MOST = 5;

// What was typed and is not used yet: it outlasts the form, which is made anew when the line changes.
let draft = null;

const points = () => state.plan.yard.lie.surveyed;
const rows = () => (points() ?? []).map((point) => point.map((v) => plain(v, "length")[0]));
const text = () => columns(points() ?? []);

function told(wrong) {
  const first = wrong.slice(0, MOST).map(noRow);
  const rest = wrong.length - first.length;
  return [...first, ...(rest > 0 ? [words.more(rest)] : [])].join("\n");
}

/** The points of a text, none where they are too few; throws what is wrong with its rows, one by one. */
function ground(text) {
  const points = readPairs(text);
  return points.length < 2 ? null : points;
}

/** Lays the line on other ground; whoever works by keyboard stays at the form, which is made anew. */
function lay(lie) {
  draft = null;
  edit((plan) => (plan.yard.lie = lie), "structure");
  document.getElementById("readings-use").focus({ preventScroll: true });
}

/** Uses what was typed; a row that cannot be read is named, and the yard stays as it was. */
function use(box, area) {
  let surveyed, wrong;
  try {
    surveyed = ground(area.value);
    wrong = surveyed ? "" : words.few;
  } catch (rows) {
    wrong = told(rows);
  }
  if (surveyed) return lay({ surveyed });
  box.dataset.unread = wrong;
  box.dispatchEvent(new CustomEvent("unread", { bubbles: true }));
}

/** One slope from the first reading to the last. */
function level() {
  const [first, last] = [points()[0], points().at(-1)];
  const grade = (last[1] - first[1]) / (last[0] - first[0]);
  lay({ grade: Number.isFinite(grade) ? grade : 0 });
}

function download() {
  const [, unit] = plain(0, "length");
  const heading = [words.station, words.height].map((word) => `${word} (${unit})`);
  saveRows([heading, ...rows().map((row) => row.map(Number))], "readings.csv");
}

function button(text, id, act) {
  const made = make("button", { type: "button", id }, text);
  made.addEventListener("click", act);
  return made;
}

/** The form. */
export function readings() {
  const box = make("div", { className: "field", data: { field: "yard.lie.surveyed" } });
  const area = make("textarea", { id: "readings-text", rows: 8, spellcheck: false, autocomplete: "off", value: draft ?? text() });
  area.setAttribute("aria-describedby", "readings-told");
  area.addEventListener("input", () => (draft = area.value));
  const actions = make("p", { className: "actions" }, button(words.use, "readings-use", () => use(box, area)));
  if (points()) actions.append(button(words.save, "readings-save", download), button(words.even, "readings-even", level));
  box.append(
    make("label", { htmlFor: area.id }, words.label(plain(0, "length")[1])),
    area,
    make("p", { className: "fault", id: "readings-told", hidden: true }),
    actions,
  );
  box.sync = () => {};
  return box;
}

onChange((what) => {
  if (what === "opened") draft = null;
});
