// Drawings: the simulator writes them, black on white, with figures and no words.

import { state } from "../state.js";
import { point } from "../words.js";
import { make } from "../parts/make.js";
import { work } from "./work.js";

const SVG = "http://www.w3.org/2000/svg";

// What belongs to the picture; the rest to what is in it.
const OUTER = ["viewBox", "width", "height", "role"];

/** A drawing as a text of SVG. */
export function drawn(what) {
  const wants = { system: state.system, decimal: point, readings: work.readings };
  return work.works.sketch(what, wants);
}

/** A text of SVG as an element. What the root says of its content goes along with the content: the page has its own mind about pictures. */
function element(text) {
  const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  const [svg, inner] = ["svg", "g"].map((name) => document.createElementNS(SVG, name));
  for (const { name, value } of [...root.attributes]) {
    if (!name.startsWith("xmlns")) (OUTER.includes(name) ? svg : inner).setAttribute(name, value);
  }
  svg.setAttribute("class", "sketch");
  for (const empty of root.querySelectorAll("title:empty, desc:empty")) empty.remove();
  inner.append(...root.childNodes);
  svg.append(inner);
  return svg;
}

/** A drawing alone, as a page in full size is. */
export function sheet(what, told) {
  const svg = element(drawn(what));
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", told);
  return svg;
}

/** The letters of a drawing with their words, from A on. */
export const letters = (words) => Object.fromEntries(words.map((word, i) => [String.fromCharCode(65 + i), word]));

/** What the letters of a drawing mean, of those that stand on it. */
function lettered(svg, legend) {
  const texts = [...svg.querySelectorAll("text")].map(({ textContent }) => textContent);
  const stands = (letter) => texts.some((text) => text === letter || text.startsWith(`${letter} `));
  return Object.entries(legend).filter(([letter]) => stands(letter)).map(([letter, word]) => `${letter}: ${word}`).join("; ");
}

/** A drawing with its name, and what its letters mean, or what else is said of it. */
export function figure(what, told, legend = "") {
  const svg = sheet(what, told);
  const under = typeof legend === "string" ? legend : lettered(svg, legend);
  return make("figure", {}, make("div", { className: "wide" }, svg), make("figcaption", {}, [told, under].filter(Boolean).join(". ")));
}
