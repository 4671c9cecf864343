// Play, pause, scrub, slow, whole line, from the top: by thumb and by key.

import { onChange } from "../state.js";
import { play as words, seconds } from "../words.js";
import { clock, seek, play, pause, duration, atEnd } from "./clock.js";
import { look, repaint, zoom } from "./drawing.js";

const button = (id) => document.getElementById(id);
const scrub = button("scrub");

function show() {
  const word = clock.playing ? words.pause : atEnd() ? words.again : words.ride;
  button("play").querySelector("span").textContent = word;
  button("play").classList.toggle("on", clock.playing);
  button("slow").setAttribute("aria-pressed", clock.slow);
  button("whole").setAttribute("aria-pressed", look.whole);
}

function follow() {
  scrub.max = duration();
  scrub.value = clock.time;
  scrub.setAttribute("aria-valuetext", seconds(clock.time));
}

const toggle = () => (clock.playing ? pause() : play());

function move(time) {
  if (clock.playing) pause();
  seek(time);
  repaint();
}

function key(event) {
  if (event.target.closest("input, select, button, summary, a")) return;
  const steps = { ArrowLeft: -0.1, ArrowRight: 0.1 };
  if (event.key === " ") toggle();
  else if (event.key === "Home") move(0);
  else if (event.key === "+" || event.key === "-") zoom(event.key === "+" ? 1.25 : 0.8);
  else if (event.key in steps) move(clock.time + steps[event.key]);
  else return;
  event.preventDefault();
}

export function startControls() {
  button("play").addEventListener("click", toggle);
  button("restart").addEventListener("click", () => {
    seek(0);
    play();
  });
  button("slow").addEventListener("click", () => {
    clock.slow = !clock.slow;
    show();
  });
  button("whole").addEventListener("click", () => {
    look.whole = !look.whole;
    show();
    repaint();
  });
  scrub.addEventListener("input", () => move(scrub.valueAsNumber));
  document.addEventListener("keydown", key);
  onChange((what) => (what === "frame" ? follow() : show()));
}
