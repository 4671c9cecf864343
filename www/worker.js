// Works out, beside the page, what takes longer than a frame.

import init, { initPart, ride, study } from "./carryline.js";

let ready;

/** Rides a plan; the traces are handed over, not copied: the page has other things to do. */
function rideBeside(plan, riders) {
  const riding = ride(plan, riders);
  const [story, traces] = [riding.story(), riding.traces()];
  riding.free();
  postMessage({ part: "ride", answer: { story, traces } }, [story.trace, ...traces].map((trace) => trace.buffer));
}

// The first message brings the simulator as the page has compiled it.
onmessage = async ({ data: { simulator, asked, plan, part, riders } }) => {
  ready ??= init({ module_or_path: simulator.first }).then(() => initPart("rest", simulator.rest));
  await ready;
  if (!part) return;
  try {
    if (part === "ride") rideBeside(plan, riders);
    else postMessage({ asked, part, answer: study(plan, part) });
  } catch (faults) {
    // The page reads the same plan and tells its faults itself.
    if (!Array.isArray(faults)) throw faults;
    postMessage({ asked, part, answer: null });
  }
};
