// The whole line with its speeds as a picture that stands by itself.

import { state } from "../state.js";
import { plain } from "../units.js";
import { picture as words } from "../words.js";
import { svgOf } from "./drawing.js";

// Width and height that pages of messages show a picture in, px.
const SIZE = [1200, 630];

// Pixels to each of these in a picture made of pixels.
const FINE = 2;

const text = (css) => document.querySelector(css).textContent;

/** The picture as SVG text. */
export function svg() {
  const legend = state.story.jumps.length ? words.legend(plain(0, "speed")[1]) : "";
  const above = [text("#told"), legend].filter(Boolean).join("\n");
  return svgOf(...SIZE, state.good.name, above, text("#result > .caution"));
}

/** The same in pixels, as a file. */
export async function png() {
  const image = new Image();
  image.src = `data:image/svg+xml,${encodeURIComponent(svg())}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = SIZE.map((side) => side * FINE);
  canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((done, fail) => canvas.toBlob((blob) => (blob ? done(blob) : fail(new Error("no picture"))), "image/png"));
}
