// Works out, beside the page, what takes longer than a frame: one thing for each message.

import init, { ride, study } from "./carryline.js";

let ready;
let shed;

/** What studies a plan: where test rides were seen, the shed, which is fetched for the first of them. */
async function studyOf(plan) {
  if (!plan.seen?.length) return study;
  shed ??= await import("./shed.js").then((made) => made.default().then(() => made));
  return shed.study;
}

/** Rides a plan; the traces are handed over, not copied: the page has other things to do. */
function rideBeside(plan, riders) {
  const riding = ride(plan, riders);
  const [story, traces] = [riding.story(), riding.traces()];
  riding.free();
  return [{ story, traces }, [story.trace, ...traces].map((trace) => trace.buffer)];
}

onmessage = async ({ data: { module, number, part, plan, riders } }) => {
  // The first message brings the simulator, as the page has compiled it.
  ready ??= init({ module_or_path: module });
  try {
    await ready;
    if (module) return;
    const [answer, given] = part === "ride" ? rideBeside(plan, riders) : [(await studyOf(plan))(plan, part), []];
    postMessage({ number, answer }, given);
  } catch (error) {
    // The page reads the same plan and tells its faults itself. Anything else is a breakdown, which the page
    // would not hear of: nobody waits for what this function gives.
    postMessage(Array.isArray(error) ? { number, answer: null } : { number, broken: String(error) });
  }
};
