// Starts the page: loads the simulator, opens the plan in the address, and lets the parts run.

import init, { open as openLink } from "./carryline.js";
import { state, edit, rewrite, onChange } from "./state.js";
import { inWords } from "./names.js";
import { keepSystem, usualSystem } from "./units.js";
import { damaged, broken, otherModel, model } from "./words.js";
import { startDrawing } from "./parts/drawing.js";
import { startControls } from "./parts/controls.js";
import { startLips } from "./parts/lips.js";
import { startPlan } from "./parts/plan.js";
import { startFaults } from "./parts/faults.js";
import { startFeel } from "./parts/feel.js";
import { startCards } from "./parts/cards.js";
import { startWhatIf } from "./parts/what_if.js";
import { startSound } from "./parts/sound.js";
import { startGrips } from "./parts/grips.js";
import { startCosts } from "./parts/costs.js";
import { startStudy } from "./parts/study.js";
import { startTestDay } from "./parts/test_day.js";
import { startSeen } from "./parts/seen.js";
import { openNew, openOwn, startLines } from "./parts/lines.js";
import { startShare, isOwnAddress } from "./parts/share.js";
import { say } from "./parts/message.js";
import { noLink } from "./wrong.js";

function openAddress() {
  const { plan, trouble, other_model: made } = openLink(location.hash);
  const hash = location.hash.length > 1 && !trouble ? location.hash : "";
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
  await init();
  startUnits();
  startName();
  startLips();
  startPlan();
  startFaults();
  startDrawing();
  startControls();
  startLines();
  startShare();
  startFeel();
  startSound();
  startCards();
  startWhatIf();
  startGrips();
  startCosts();
  startTestDay();
  startSeen();
  startStudy();
  openAddress();
  window.addEventListener("hashchange", () => {
    if (!isOwnAddress()) openAddress();
  });
  document.documentElement.dataset.ready = "true";
}

start().catch((error) => {
  console.error(error);
  say(broken);
});
