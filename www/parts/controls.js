// Play, pause, scrub, slow, whole line, from the top: by thumb and by key.

import { onChange } from "../state.js";
import { fixed } from "../numbers.js";
import { play as words, pace, view, seconds } from "../words.js";
import { clock, seek, play, pause, duration, atEnd, PACES } from "./clock.js";
import { say } from "./make.js";
import { arrange, look, repaint, zoom } from "./drawing.js";

const button = (id) => document.getElementById(id);
const scrub = button("scrub");

function show() {
  const word = clock.playing ? words.pause : atEnd() ? words.again : words.ride;
  say(button("play").querySelector("span"), word);
  button("play").classList.toggle("on", clock.playing);
  say(button("slow").querySelector("span"), pace[clock.pace]);
  button("slow").classList.toggle("set", clock.pace !== "full");
  say(button("view").querySelector("span"), look.saddle ? view.side : view.saddle);
  button("whole").setAttribute("aria-pressed", look.whole);
}

let followed = "";

function follow() {
  const at = `${clock.time} of ${duration()}`;
  if (at === followed) return;
  followed = at;
  scrub.max = duration();
  scrub.value = clock.time;
  scrub.setAttribute("aria-valuetext", seconds(fixed(clock.time, 2)));
}

const toggle = () => (clock.playing ? pause() : play());

function move(time) {
  if (clock.playing) pause();
  seek(time);
  repaint();
}

function key(event) {
  if (event.target instanceof Element && event.target.closest("input, select, button, summary, a")) return;
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
    clock.pace = PACES[(PACES.indexOf(clock.pace) + 1) % PACES.length];
    show();
  });
  button("view").addEventListener("click", () => {
    look.saddle = !look.saddle;
    show();
    arrange();
  });
  button("whole").addEventListener("click", () => {
    look.whole = !look.whole;
    if (look.whole) look.saddle = false;
    show();
    arrange();
  });
  scrub.addEventListener("input", () => move(scrub.valueAsNumber));
  document.addEventListener("keydown", key);
  onChange((what) => (what === "moment" ? follow() : what !== "frame" && show()));
}
