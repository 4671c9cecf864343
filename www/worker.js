// Works out, beside the page, what takes longer than a frame.

import init, { spread } from "./carryline.js";

const ready = init();

onmessage = async ({ data: { asked, plan } }) => {
  await ready;
  try {
    postMessage({ asked, spreads: spread(plan) });
  } catch (faults) {
    // The page rides the same plan and tells its faults itself.
    if (!Array.isArray(faults)) throw faults;
    postMessage({ asked, spreads: null });
  }
};
