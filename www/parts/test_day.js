// The test day: what to ride first, what to see at each flag, when to stop.

import { state, onChange } from "../state.js";
import { explain } from "./terms.js";
import { order } from "./trials.js";

const section = document.getElementById("test-day");

function show() {
  const day = state.study.test_day;
  section.hidden = !day || !day.trials.length;
  if (section.hidden) return;
  section.lastElementChild.replaceChildren(...order(day));
  explain(section.lastElementChild);
}

export function startTestDay() {
  onChange((what) => {
    if (state.story && ["plan", "structure", "study"].includes(what)) show();
  });
}
