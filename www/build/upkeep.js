// Weather and upkeep: how dirt settles, where water goes, when to stay off, and what was built.

import { features, state } from "../state.js";
import { jumpNames } from "../names.js";
import { plain } from "../units.js";
import { howShort } from "../words.js";
import { noRow } from "../wrong.js";
import { columns, readPairs } from "../parts/columns.js";
import { make } from "../parts/make.js";
import { button, buttons, leaf, list, part, table, text } from "./leaf.js";
import { length, percent, signed, speed } from "./quantities.js";
import { figure } from "./sketch.js";
import { built, keepReadings, work } from "./work.js";
import { titles, upkeep as words } from "./words.js";

const ofDirt = (part) => part?.surface !== "wood";

/** The heights that are of dirt, each with what it is. */
function heights() {
  return features(state.good).flatMap((feature, i) => {
    const name = work.names[i];
    if (feature.kind === "start_ramp" && ofDirt(feature)) return [[name, feature.platform_height]];
    if (feature.kind === "roller" && ofDirt(feature)) return [[name, feature.height]];
    if (feature.kind !== "jump") return [];
    const { lip, landing } = feature;
    return [...(ofDirt(lip) ? [[words.lip(name), lip.height]] : []), ...(ofDirt(landing) ? [[words.landing(name), landing.height]] : [])];
  });
}

function settling() {
  const { settling: share } = work.job;
  const rows = heights().map(([name, height]) => [name, length(height), length(height * (1 - share)), length(height / (1 - share))]);
  const called = jumpNames(state.good);
  const told = (row) => (row ? [row.speed == null ? "–" : speed(row.speed), howShort[row.how]] : ["–", words.cannot]);
  const verdicts = state.story.jumps.map((row, i) => [called(row), ...told(row), ...told(work.settled?.[i])]);
  return [
    text(words.settles(percent(share), words.placings[work.supplies.placing])),
    table([words.what, `#${words.planned}`, `#${words.after}`, `#${words.buildTo}`], rows),
    text(words.higher),
    table([words.jump, `#${words.speedPlanned}`, words.asPlanned, `#${words.speedAfter}`, words.asSettled], verdicts),
    text(work.settled ? words.model : words.cannotBuild),
  ];
}

// What was typed and is not used yet, and what is wrong with it: both outlast the form.
let draft = null;
let wrong = "";

/** Takes what was typed; says what is wrong with it. */
function take(area, told, renew) {
  try {
    const points = readPairs(area.value);
    draft = null;
    wrong = "";
    keepReadings(points);
    renew();
  } catch (rows) {
    if (!Array.isArray(rows)) throw rows;
    told.textContent = wrong = noRow(rows[0]);
    told.hidden = false;
  }
}

function form(renew) {
  const area = make("textarea", { id: "built-text", rows: 6, spellcheck: false, autocomplete: "off", value: draft ?? columns(work.readings) });
  const told = make("p", { className: "fault", id: "built-told", hidden: !wrong }, wrong);
  area.setAttribute("aria-describedby", told.id);
  area.addEventListener("input", () => (draft = area.value));
  return make("div", { className: "field survey" }, make("label", { htmlFor: area.id }, words.readings(plain(0, "length")[1])), area, told, buttons(button(words.compare, () => take(area, told, renew), "built-use")));
}

function resurvey(renew) {
  if (!work.readings.length) return [text(words.surveyHow), form(renew), roomToWrite()];
  const { all, largest } = built();
  const most = new Set(largest.map(({ station }) => station));
  const row = ({ station, planned, built: is, off, feature }) => [length(station), work.names[feature] ?? "–", length(planned), length(is), most.has(station) ? make("b", {}, signed(off)) : signed(off)];
  const left = work.readings.length - all.length;
  return [
    text(words.surveyHow),
    form(renew),
    figure({ kind: "built" }, words.builtDrawn, words.builtLegend),
    table([`#${words.station}`, words.feature, `#${words.planned}`, `#${words.built}`, `#${words.off}`], all.map(row)),
    text(words.largest),
    left > 0 && text(words.beyond(left)),
    text(words.offHow),
  ];
}

/** On paper: rows to write readings into, stakes filled in. */
function roomToWrite() {
  const rows = work.job.stakes.map((stake, i) => [String(i + 1), length(stake.station), length(stake.ground + stake.height), "", ""]);
  return make("div", { className: "paper" }, table([`#${words.stake}`, `#${words.station}`, `#${words.planned}`, words.built, words.off], rows, { className: "room" }) ?? "");
}

/** The sheet. */
export function upkeep(renew) {
  const wet = work.job.lows.filter(({ stands }) => stands > 0.005).map(({ station }) => length(station));
  return leaf(
    "upkeep",
    titles.upkeep,
    part(words.settling, ...settling()),
    part(words.drainage, text(wet.length ? words.standing(wet.join("; ")) : words.runsOff), list(words.drains)),
    part(words.fit, list(words.fits)),
    part(words.yearly, list(words.looks)),
    part(words.survey, ...resurvey(renew)),
  );
}
