// Works out, beside the page, what takes longer than a frame.

import init, { initPart, study } from "./carryline.js";

let ready;

// The first message brings the simulator as the page has compiled it.
onmessage = async ({ data: { simulator, asked, plan, part } }) => {
  ready ??= init({ module_or_path: simulator.first }).then(() => initPart("rest", simulator.rest));
  await ready;
  try {
    postMessage({ asked, part, answer: study(plan, part) });
  } catch (faults) {
    // The page rides the same plan and tells its faults itself.
    if (!Array.isArray(faults)) throw faults;
    postMessage({ asked, part, answer: null });
  }
};
