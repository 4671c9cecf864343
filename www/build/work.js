// The job as it is shown: what was last worked out without a fault.

import * as shed from "../shed.js";
import { ride } from "../carryline.js";
import { put, read } from "../device.js";
import { names } from "../names.js";
import { state } from "../state.js";

const KEY = "carryline.supplies";
const READINGS = "carryline.built";

export const work = {
  supplies: null, // those of the sheets
  asked: null, // as set, perhaps with faults
  works: null, // of the simulator: what tells and draws the job
  job: null,
  settled: null, // the jumps as the first rider rides them after a season; none where what is left cannot be built
  names: [], // what the features are called
  readings: [], // of what was built, each a station and a height, m
};

/** What there is to build with, as it was kept; what is not known here is left out. */
export function takeSupplies() {
  const usual = usualSupplies();
  const kept = read("localStorage", KEY);
  const known = Object.entries(kept ?? {}).filter(([name]) => name in usual);
  work.supplies = usual;
  work.asked = { ...structuredClone(usual), ...Object.fromEntries(known) };
  work.readings = read("sessionStorage", READINGS) ?? [];
}

/** Keeps what there is to build with. */
export const keepSupplies = () => put("localStorage", KEY, work.asked);

/** What it usually is; whoever thinks in feet has other paper. */
export const usualSupplies = () => ({ ...shed.usual_supplies(), paper: state.system === "feet" ? "letter" : "a4" });

export function keepReadings(readings) {
  work.readings = readings;
  put("sessionStorage", READINGS, readings);
}

/** What was built against what was planned. */
export const built = () => work.works.built(work.readings);

/** Where a long section is cut into parts, each a station and a station, m. */
export const parts = () => work.works.section_parts();

function worked(plan, supplies) {
  const works = new shed.Works(plan, supplies);
  const riding = ride(plan, 1);
  work.works?.free();
  state.story = riding.story();
  riding.free();
  state.plan = state.good = plan;
  Object.assign(work, { works, ...works.told(), supplies: structuredClone(supplies), names: names(plan) });
}

/** Works the job of a plan out; what is shown stays where there are faults, which are given back. */
export function reckon(plan) {
  try {
    worked(plan, work.asked);
    return [];
  } catch (faults) {
    if (!Array.isArray(faults)) throw faults;
    // Supplies that were never good are no reason to show nothing.
    if (!work.job && faults.every(ofSupplies)) worked(plan, work.supplies);
    return faults;
  }
}

/** Whether a fault is one of what there is to build with. */
export const ofSupplies = ({ field }) => field.split(/[.[]/)[0] in work.supplies;
