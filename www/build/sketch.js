// Drawings: the simulator writes them, black on white, with figures and no words.

import * as shed from "../shed.js";
import { state } from "../state.js";
import { point } from "../words.js";
import { make } from "../parts/make.js";
import { work } from "./work.js";

const SVG = "http://www.w3.org/2000/svg";

// What belongs to the picture; the rest to what is in it.
const OUTER = ["viewBox", "width", "height", "role"];

/** A drawing as a text of SVG. */
export function drawn(what) {
  const wants = { system: state.system, decimal: point, readings: work.readings, tolerances: null };
  return shed.sketch(state.good, work.supplies, what, wants);
}

/** A text of SVG as an element. What the root says of its content goes along with the content: the page has its own mind about pictures. */
function element(text) {
  const root = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  const [svg, inner] = ["svg", "g"].map((name) => document.createElementNS(SVG, name));
  for (const { name, value } of [...root.attributes]) {
    if (!name.startsWith("xmlns")) (OUTER.includes(name) ? svg : inner).setAttribute(name, value);
  }
  svg.setAttribute("class", "sketch");
  inner.append(...root.childNodes);
  svg.append(inner);
  return svg;
}

/** A drawing for the page, with what its letters mean. */
export function figure(what, told, legend) {
  if (!shed.sketch) return null;
  const svg = element(drawn(what));
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", told);
  const under = [told, ...(legend ? [legend] : [])].join(". ");
  return make("figure", {}, svg, make("figcaption", {}, under));
}

/** A page in full size: nothing but the drawing. */
export function sheet(what, told) {
  const svg = element(drawn(what));
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", told);
  return svg;
}
