// Works out, beside the page, what takes longer than a frame.

import init, { study } from "./carryline.js";

const ready = init();

onmessage = async ({ data: { asked, plan, part } }) => {
  await ready;
  try {
    postMessage({ asked, part, answer: study(plan, part) });
  } catch (faults) {
    // The page rides the same plan and tells its faults itself.
    if (!Array.isArray(faults)) throw faults;
    postMessage({ asked, part, answer: null });
  }
};
