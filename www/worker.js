// Works out, beside the page, what takes longer than a frame.

import init, { initPart, ride, study } from "./carryline.js";

let ready;

/** The ride of a plan, as it can be handed over. */
function ridden(plan, riders) {
  const riding = ride(plan, riders);
  const answer = { story: riding.story(), traces: riding.traces() };
  riding.free();
  return answer;
}

// The first message brings the simulator as the page has compiled it.
onmessage = async ({ data: { simulator, asked, plan, part, riders } }) => {
  ready ??= init({ module_or_path: simulator.first }).then(() => initPart("rest", simulator.rest));
  await ready;
  if (!part) return;
  try {
    postMessage({ asked, part, answer: part === "ride" ? ridden(plan, riders) : study(plan, part) });
  } catch (faults) {
    // The page reads the same plan and tells its faults itself.
    if (!Array.isArray(faults)) throw faults;
    postMessage({ asked, part, answer: null });
  }
};
