// What the ride sounds like: made from its loads and speeds, no recordings. Off until asked for.

import { put, read } from "../device.js";
import { state, onChange } from "../state.js";
import { sound as words } from "../words.js";
import { at, clock } from "./clock.js";

const KEY = "carryline.sound";

const button = document.getElementById("sound");
const calm = matchMedia("(prefers-reduced-motion: reduce)");

// Speed at which tyres and wind are as loud as they get, m/s.
const LOUD = 12;
// Boards go by every so many metres; a freewheel clicks so many times in a metre of way (common practice, no
// source).
const BOARD = 0.15;
const CLICKS = 11;
// How quickly a sound follows the ride, s.
const FOLLOW = 0.03;
// How loud a touch-down is for each weight of load, and how long the device shakes for it, ms.
const THUMP = 0.16;
const SHAKE = 12;
// How long after a touch-down its heaviest load is looked for, s.
const FELT = 0.15;

let graph = null;
let aloft = false;
let before = 0;
let wanted = false;

/** Even noise, the same every time: a seeded sequence, one second of it. */
function noise(context) {
  const buffer = context.createBuffer(1, context.sampleRate, context.sampleRate);
  const values = buffer.getChannelData(0);
  let seed = 1;
  for (let i = 0; i < values.length; i++) {
    // Park and Miller 1988, "Random number generators: good ones are hard to find": the minimal standard.
    seed = (seed * 16807) % 2147483647;
    values[i] = (seed / 2147483647) * 2 - 1;
  }
  return buffer;
}

function voice(context, source, type, frequency, q) {
  const filter = new BiquadFilterNode(context, { type, frequency, Q: q });
  const gain = new GainNode(context, { gain: 0 });
  source.connect(filter).connect(gain).connect(context.destination);
  return { filter, gain: gain.gain };
}

function build() {
  const context = new AudioContext();
  const hiss = new AudioBufferSourceNode(context, { buffer: noise(context), loop: true });
  const dirt = voice(context, hiss, "lowpass", 500, 0.6);
  const wood = voice(context, hiss, "bandpass", 240, 3);
  const wind = voice(context, hiss, "bandpass", 900, 0.5);
  // Boards and clicks chop the noise up: each is a short pulse, so many times a second.
  const boards = new OscillatorNode(context, { type: "sawtooth", frequency: 1 });
  const knock = new GainNode(context, { gain: 0 });
  boards.connect(knock).connect(wood.gain);
  const clicks = new OscillatorNode(context, { type: "square", frequency: 1 });
  const wheel = voice(context, clicks, "highpass", 2500, 0.7);
  for (const source of [hiss, boards, clicks]) source.start();
  return { context, dirt, wood, wind, wheel, boards: boards.frequency, knock: knock.gain, clicks: clicks.frequency };
}

function set(parameter, value) {
  parameter.setTargetAtTime(value, graph.context.currentTime, FOLLOW);
}

/** What each voice has to do at a moment of the ride: loudness from 0 to 1, and pulses in a second. */
export function voices({ speed, press, wood }) {
  const pace = Math.min(speed / LOUD, 1);
  const rolling = Math.min(press, 4) * pace;
  return {
    dirt: wood ? 0 : 0.35 * rolling,
    wood: wood ? 0.5 * rolling : 0,
    wind: 0.3 * pace * pace,
    wheel: speed > 0.3 ? 0.015 : 0,
    boards: speed / BOARD,
    clicks: speed * CLICKS,
  };
}

function follow(row, rate) {
  const now = voices(row);
  for (const name of ["dirt", "wood", "wind", "wheel"]) set(graph[name].gain, rate * now[name]);
  set(graph.knock, rate * now.wood);
  set(graph.boards, Math.max(now.boards, 0.1));
  set(graph.clicks, Math.max(now.clicks, 0.1));
}

/** The heaviest load soon after a moment, body weights. */
function heaviest(time) {
  let most = 0;
  for (let t = time; t <= time + FELT; t += 0.01) most = Math.max(most, at(t).g);
  return most;
}

function thump(g) {
  const { context } = graph;
  const now = context.currentTime;
  const body = new OscillatorNode(context, { type: "sine", frequency: 110 });
  const gain = new GainNode(context, { gain: Math.min(THUMP * g, 0.8) });
  body.frequency.exponentialRampToValueAtTime(42, now + 0.15);
  gain.gain.exponentialRampToValueAtTime(0.001, now + 0.3);
  body.connect(gain).connect(context.destination);
  body.start();
  body.stop(now + 0.3);
}

function hush() {
  for (const name of ["dirt", "wood", "wind", "wheel"]) set(graph[name].gain, 0);
  set(graph.knock, 0);
}

function frame() {
  if (!graph || !state.story) return;
  const row = at(clock.time);
  if (clock.playing) {
    follow(row, 1);
    const landed = aloft && !row.aloft && clock.time > before && clock.time - before < FELT;
    if (landed) {
      const g = heaviest(clock.time);
      thump(g);
      if (!calm.matches) navigator.vibrate?.(Math.round(SHAKE * g));
    }
  }
  aloft = row.airtime > 0.1;
  before = clock.time;
}

function turn(on) {
  wanted = on;
  if (on) {
    graph ??= build();
    graph.context.resume();
  } else graph?.context.suspend();
  put("localStorage", KEY, on);
  tell();
}

function tell() {
  button.setAttribute("aria-pressed", wanted);
  button.querySelector("span").textContent = wanted ? words.on : words.off;
}

/** What was wanted last time; where motion is not wanted, sound is asked for anew each time. */
function remembered() {
  return read("localStorage", KEY) === true && !calm.matches;
}

export function startSound() {
  wanted = remembered();
  tell();
  button.addEventListener("click", () => turn(!wanted || !graph));
  // Nothing sounds before somebody touched the page; then what was wanted last time comes back.
  const wake = (event) => {
    removeEventListener("pointerdown", wake);
    removeEventListener("keydown", wake);
    if (wanted && !graph && !button.contains(event.target)) turn(true);
  };
  addEventListener("pointerdown", wake);
  addEventListener("keydown", wake);
  document.addEventListener("visibilitychange", () => {
    if (document.hidden) graph?.context.suspend();
    else if (wanted) graph?.context.resume();
  });
  onChange((what) => {
    if (what === "frame") frame();
    else if (what === "clock" && graph && !clock.playing) hush();
  });
}
