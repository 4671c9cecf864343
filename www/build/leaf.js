// What a sheet is made of: headings, tables, lists, drawings, cautions.

import { language } from "../language.js";
import { state } from "../state.js";
import { lines } from "../words.js";
import { make } from "../parts/make.js";
import { common as words } from "./words.js";

const some = (content) => content.flat().filter((part) => part != null && part !== false && part !== "");

/** A sheet: a page of its own on paper. `id` is its name among the others. */
export function leaf(id, title, ...content) {
  const day = new Date().toLocaleDateString(language, { dateStyle: "medium" });
  const head = make("header", {}, make("h2", {}, title), make("p", {}, `${state.good.name || lines.unnamed} · ${day}`));
  const up = make("a", { href: "#contents" }, words.up);
  // The address holds the line, and is no place on the page.
  up.addEventListener("click", (event) => {
    event.preventDefault();
    document.getElementById("contents").scrollIntoView({ block: "start" });
  });
  const foot = make("footer", {}, make("p", {}, words.worked), make("p", { className: "up" }, up));
  const element = make("article", { className: "leaf", id: `leaf-${id}`, tabIndex: -1 }, head, ...some(content), foot);
  return { id, title, element };
}

/** A part of a sheet under a heading, which stays with what follows; nothing where there is nothing in it. */
export function part(title, ...content) {
  const all = some(content);
  return all.length ? make("section", {}, make("h3", {}, title), ...all) : null;
}

export const text = (said) => (said ? make("p", {}, said) : null);
export const caution = (said) => (said ? make("p", { className: "caution" }, said) : null);

/** Several sentences, one under the other. */
export function list(sentences, className = "") {
  const all = some(sentences);
  return all.length ? make("ul", { className }, ...all.map((said) => make("li", {}, said))) : null;
}

/** What has to be minded, the first the weightiest. */
export const cautions = (sentences) => part(words.mind, list(sentences, "cautions"));

/** Words and figures in pairs; pairs without a figure are left out. */
export function facts(pairs) {
  const known = pairs.filter((pair) => pair && pair[1]);
  if (!known.length) return null;
  return make("dl", {}, ...known.map(([word, figure]) => make("div", {}, make("dt", {}, word), make("dd", {}, figure))));
}

// With more columns than this, not all of them figures, a row is laid out in lines on a narrow screen.
const FEW = 4;

function cell(value, heading, first) {
  const made = make(first ? "th" : "td", { data: { label: heading } }, value ?? "");
  if (first) made.scope = "row";
  return made;
}

// A table with more rows than this may go on on the next page.
const MANY = 14;

/** A table; nothing without rows. A heading that begins with `#` stands over figures. */
export function table(headings, rows, { className = "" } = {}) {
  if (!rows.length) return null;
  const figures = headings.map((heading) => heading.startsWith("#"));
  const names = headings.map((heading) => heading.replace(/^#/, ""));
  const align = (made, i) => {
    if (figures[i]) made.classList.add("figure");
    return made;
  };
  const head = make("tr", {}, ...names.map((name, i) => align(make("th", { scope: "col" }, name), i)));
  const body = rows.map((row) => make("tr", {}, ...row.map((value, i) => align(cell(value, names[i], i === 0), i))));
  const made = make("table", { className }, make("thead", {}, head), make("tbody", {}, ...body));
  if (headings.length > FEW && figures.some((figure) => !figure)) made.classList.add("many");
  return make("div", { className: rows.length > MANY ? "wide" : "wide whole" }, made);
}

/** A table with few columns, and many rows, as several beside each other. */
export function beside(headings, rows, count = 3) {
  const high = Math.ceil(rows.length / count);
  const parts = Array.from({ length: count }, (_, i) => table(headings, rows.slice(i * high, (i + 1) * high)));
  return make("div", { className: "several" }, ...some(parts));
}

/** A button that does something; not on paper. */
export function button(said, act, id) {
  const made = make("button", { type: "button", ...(id && { id }) }, said);
  made.addEventListener("click", act);
  return made;
}

export const buttons = (...all) => make("p", { className: "actions" }, ...some(all));
