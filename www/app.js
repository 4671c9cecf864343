// Starts the page: loads the simulator, opens the plan in the address, and lets the parts run.

import { default as init, demo, open as openLink } from "./carryline.js";
import { state, edit, rewrite, rideOthers, onChange } from "./state.js";
import { inWords } from "./names.js";
import { offerSystems } from "./units.js";
import { damaged, broken, otherModel, model } from "./words.js";
import { startDrawing } from "./parts/drawing.js";
import { startControls } from "./parts/controls.js";
import { startLips } from "./parts/lips.js";
import { startFeel } from "./parts/feel.js";
import { openNew, openOwn, startLines, tellUnread } from "./parts/lines.js";
import { say } from "./parts/message.js";
import { isShown, keepAddress, startAddress } from "./parts/address.js";
import { noLink, reason } from "./wrong.js";

const hasLink = () => location.hash.length > 1;

function openAddress() {
  const { plan, trouble, fault, other_model: made } = hasLink() ? openLink(location.hash) : { plan: demo() };
  const hash = hasLink() && !trouble ? location.hash : "";
  say("");
  // A line that came in a link is looked at first; the reader's own stay as they are, and may have faults.
  if (trouble || !openOwn(hash)) {
    const good = hash && !fault;
    openNew(good ? plan : inWords(plan), Boolean(good));
    if (good && made != null) say(otherModel(made, state.story.model));
    // The link stays in the address: somebody may want to copy it, or try it again.
    if (hasLink() && !good) keepAddress();
    if (trouble) say(damaged(noLink(trouble)));
    else if (fault) say(damaged(`${fault.field}: ${reason(fault.why)}`));
  }
  if (!hasLink()) tellUnread();
  if (state.story) document.getElementById("model").textContent = model(state.story.model);
}

function startName() {
  const name = document.getElementById("plan-name");
  const show = () => {
    if (document.activeElement !== name) name.value = state.plan.name;
    document.title = `${state.plan.name} · Carryline`;
  };
  name.addEventListener("change", () => edit((plan) => (plan.name = name.value.trim()), "name"));
  onChange((what) => ["frame", "moment"].includes(what) || show());
}

const startUnits = () => offerSystems(rewrite);

// What asks nothing of the simulator waits for it; what shows the first ride comes with it.
const WAITING = [startUnits, startName, startLips, startControls, startFeel, startAddress];
const FIRST = [startDrawing, startLines, openAddress];

const painted = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));

async function start() {
  const coming = init();
  for (const part of WAITING) part();
  await coming;
  for (const part of FIRST) part();
  // With the first frame of the ride.
  requestAnimationFrame(() => performance.mark("ready"));
  await painted();
  const { startRest } = await import("./rest.js");
  rideOthers();
  startRest();
  window.addEventListener("hashchange", () => {
    // What is being typed belongs to the line it was typed at.
    document.activeElement.blur();
    if (!isShown()) openAddress();
  });
  document.documentElement.dataset.ready = "true";
}

start().catch((error) => {
  console.error(error);
  say(broken);
});
