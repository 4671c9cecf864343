// Starts the page of sheets: loads both simulators, works the job of a line out, and lays its sheets.

import { default as init } from "../carryline.js";
import { default as initShed } from "../shed.js";
import { state, tell as tellAll } from "../state.js";
import { unlessHeld } from "../finger.js";
import { steadily } from "../steady.js";
import { offerSystems } from "../units.js";
import { broken, damaged, lines } from "../words.js";
import { noLink, reason } from "../wrong.js";
import { ask, drop } from "../parts/beside.js";
import { say } from "../parts/message.js";
import { startNewer } from "../parts/newer.js";
import { boxes } from "./boxes.js";
import { lay } from "./contents.js";
import { dirt } from "./dirt.js";
import { begin, tellFaults } from "./fields.js";
import { line, onLine, wayTo } from "./line.js";
import { lips } from "./lips.js";
import { materials } from "./materials.js";
import { ramp } from "./ramp.js";
import { startSettings } from "./settings.js";
import { stakeOut, tellTolerances } from "./stakes.js";
import { tellOrder, testDaySheet } from "./test_day.js";
import { upkeep } from "./upkeep.js";
import { page as words } from "./words.js";
import { ofSupplies, reckon, takeSupplies, work } from "./work.js";

const page = document.documentElement;

// What is found out by riding again and again, in the order in which it is looked at.
const STUDIES = ["tolerances", "test_day", "missing"];

/** All sheets, in the order of the work. */
function show() {
  begin();
  lay([stakeOut(), ...lips(show), ...boxes(), ramp(), dirt(), materials(), upkeep(show), testDaySheet()].filter(Boolean));
}

/** What was found out comes in where it stands, whatever somebody is typing elsewhere. */
function tellStudy() {
  tellTolerances();
  tellOrder();
}

/** Asks for a study, and with its answer for the next. */
function study(number) {
  const part = STUDIES[number];
  if (!part) {
    delete page.dataset.working;
    return;
  }
  ask("study", { part, plan: state.good }, (answer) => {
    // What could not be found out is left out, and said.
    state.study[part] = answer ?? null;
    study(number + 1);
    unlessHeld(() => steadily(tellStudy));
  });
}

function begins() {
  drop("study");
  state.study = {};
  page.dataset.working = "true";
  study(0);
}

/** Says what is at fault, and that the sheets are of before. */
function tell(faults) {
  const held = document.getElementById("held");
  const plans = faults.filter((fault) => !ofSupplies(fault));
  held.hidden = !faults.length;
  held.textContent = !faults.length ? "" : plans.length ? words.heldPlan(reason(plans[0].why)) : words.heldSupplies;
  tellFaults(faults.filter(ofSupplies));
}

/** Takes another plan, or the same one with other supplies. */
function take(plan, before) {
  const faults = reckon(plan);
  if (!work.job) {
    reckon(before ?? line().plan);
    if (!work.job) throw faults;
  }
  show();
  document.querySelector("h1").textContent = state.good.name || lines.unnamed;
  document.title = `${state.good.name || lines.unnamed} · ${words.contents} · Carryline`;
  document.getElementById("back").href = wayTo(plan);
  tell(faults);
}

let plan = null;

function open({ plan: next, before, trouble, fault }) {
  plan = next;
  say("");
  if (trouble) say(damaged(noLink(trouble)));
  else if (fault) say(damaged(`${fault.field}: ${reason(fault.why)}`));
  take(plan, before);
  begins();
}

/** Other units: all is written anew. */
function rewrite() {
  startSettings(again);
  show();
}

/** Works out anew what hangs on the supplies: nothing that is ridden does. */
function again() {
  steadily(() => take(plan));
}

async function start() {
  await Promise.all([init(), initShed()]);
  offerSystems(rewrite);
  takeSupplies();
  startSettings(again);
  open(line());
  onLine((changed) => steadily(() => open(changed)));
  document.getElementById("print").addEventListener("click", () => window.print());
  page.dataset.ready = "true";
  // Whoever builds may want all of it where there is no connection.
  startNewer()
    .then(() => tellAll("plan"))
    .catch(console.warn);
}

start().catch((error) => {
  console.error(error);
  say(broken);
});
