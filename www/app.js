// Starts the page: loads the simulator, opens the plan in the address, and lets the parts run.

import init, { demo, fetchPart, initPart, open as openLink } from "./carryline.js";
import { state, complete, edit, rewrite, onChange } from "./state.js";
import { inWords } from "./names.js";
import { keepSystem, usualSystem } from "./units.js";
import { damaged, broken, otherModel, model } from "./words.js";
import { startDrawing } from "./parts/drawing.js";
import { startControls } from "./parts/controls.js";
import { startLips } from "./parts/lips.js";
import { startPlan } from "./parts/plan.js";
import { startFaults } from "./parts/faults.js";
import { startFeel } from "./parts/feel.js";
import { startGrips } from "./parts/grips.js";
import { openNew, openOwn, startLines } from "./parts/lines.js";
import { say } from "./parts/message.js";
import { noLink } from "./wrong.js";

const hasLink = () => location.hash.length > 1;

function openAddress() {
  const { plan, trouble, other_model: made } = hasLink() ? openLink(location.hash) : { plan: demo() };
  const hash = hasLink() && !trouble ? location.hash : "";
  // A line that came in a link is looked at first; the reader's own stay as they are.
  if (trouble || !openOwn(hash)) openNew(hash ? plan : inWords(plan), Boolean(hash));
  if (trouble) say(damaged(noLink(trouble)));
  else say(made == null ? "" : otherModel(made, state.story?.model));
  if (state.story) document.getElementById("model").textContent = model(state.story.model);
}

function startName() {
  const name = document.getElementById("plan-name");
  const show = () => {
    if (document.activeElement !== name) name.value = state.plan.name;
    document.title = `${state.plan.name} · Carryline`;
  };
  name.addEventListener("change", () => edit((plan) => (plan.name = name.value.trim()), "name"));
  onChange(show);
}

function startUnits() {
  keepSystem(usualSystem());
  for (const radio of document.querySelectorAll("#units input")) {
    radio.checked = radio.value === state.system;
    radio.addEventListener("change", () => {
      keepSystem(radio.value);
      rewrite();
    });
  }
}

async function start() {
  const coming = init();
  // What reads links is fetched beside the rest of the simulator, and by those alone who come with one.
  const link = hasLink() && fetchPart("link");
  startUnits();
  startName();
  startLips();
  startPlan();
  startFaults();
  await coming;
  if (link) await initPart("link", link);
  startDrawing();
  startControls();
  startLines();
  startFeel();
  startGrips();
  openAddress();
  document.documentElement.dataset.ready = "true";
  // With the first frame of the ride.
  requestAnimationFrame(() => performance.mark("ready"));
  const parts = link ? ["rest"] : ["rest", "link"];
  const [{ startLate }] = await Promise.all([import("./late.js"), ...parts.map((part) => initPart(part))]);
  startLate(openAddress);
  complete();
  document.documentElement.dataset.whole = "true";
}

start().catch((error) => {
  console.error(error);
  say(broken);
});
