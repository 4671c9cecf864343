// The sheets, listed: what is ticked is printed.

import { put, read } from "../device.js";
import { make } from "../parts/make.js";
import { page } from "./words.js";

// Under what name a tab keeps what is not to be printed.
const KEY = "carryline.unprinted";

const list = document.querySelector("#contents ol");
const place = document.getElementById("leaves");

const unprinted = new Set(read("sessionStorage", KEY) ?? []);

function tick(id, element, printed) {
  for (const one of [element, element.nextElementSibling]) {
    if (one && (one === element || one.classList.contains("tiles"))) one.toggleAttribute("data-unprinted", !printed);
  }
  unprinted[printed ? "delete" : "add"](id);
  put("sessionStorage", KEY, [...unprinted]);
}

function entry({ id, title, element }) {
  const box = make("input", { type: "checkbox", id: `print-${id}`, checked: !unprinted.has(id) });
  box.setAttribute("aria-label", page.printThis(title));
  box.addEventListener("change", () => tick(id, element, box.checked));
  const way = make("a", { href: `#leaf-${id}` }, title);
  // The address holds the line, and is no place on the page.
  way.addEventListener("click", (event) => {
    event.preventDefault();
    element.scrollIntoView({ block: "start" });
    element.focus({ preventScroll: true });
  });
  return make("li", {}, box, way);
}

/** Puts the sheets on the page, and into the list. */
export function lay(leaves) {
  const had = document.activeElement?.id;
  place.replaceChildren(...leaves.flatMap(({ element, after }) => (after ? [element, after] : [element])));
  list.replaceChildren(...leaves.map(entry));
  for (const { id, element } of leaves) tick(id, element, !unprinted.has(id));
  // Whoever works by keyboard stays at what was worked with.
  if (had && document.activeElement === document.body) document.getElementById(had)?.focus({ preventScroll: true });
}
