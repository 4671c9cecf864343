// A first line from four answers.

import { draft, open_file as openFile, preset } from "../carryline.js";
import { put, read } from "../device.js";
import { parse, shown } from "../units.js";
import { newLine as words, preset as riders } from "../words.js";
import { reason } from "../wrong.js";
import { make } from "./make.js";

// What stands in the form before anything is answered: lengths, m, and an age.
const USUAL = { length: 40, fall: 2, tallest: 2 };
const AGE = 10;

// Under what name the last answers are kept on the device.
const KEY = "carryline.answers";

// Of a yard with nothing on it a stretch of its grass is ridden, m, by somebody who rolls in at a jog, m/s.
const BARE = { kind: "flat", length: 4, surface: "grass" };
const ROLLING = 3;

let serial = 0;

/** What was answered the last time, or what is usual. */
function answered() {
  const before = read("localStorage", KEY) ?? {};
  const of = (name) => (Number.isFinite(before[name]) ? before[name] : USUAL[name]);
  const { ages } = preset({ label: "", age: AGE });
  const age = before.age >= ages[0] && before.age <= ages[1] ? before.age : AGE;
  return { length: of("length"), fall: of("fall"), tallest: of("tallest"), age, ages };
}

const called = (age, ages) => riders.name(age, age === ages[1]);
const mountOf = (age, ages) => preset({ label: called(age, ages), age }).preset.mount;

/** A yard as it was last answered, with nothing built on it. */
export function emptyYard() {
  const { length, fall, tallest, age, ages } = answered();
  const yard = { length, lie: { grade: -fall / length }, tallest };
  const line = { features: [BARE] };
  return openFile(JSON.stringify({ name: words.name, yard, line, initial_speed: ROLLING, riders: [mountOf(age, ages)] }));
}

function field(name, control, told) {
  const id = `new-${name}-${(serial += 1)}`;
  control.id = id;
  control.setAttribute("aria-describedby", `${id}-told`);
  told.id = `${id}-told`;
  const row = make("div", { className: "field" }, make("label", { htmlFor: id }, words[name]), control, told);
  row.dataset.answer = name;
  return row;
}

const fault = () => make("p", { className: "fault", hidden: true });

function tell(told, text) {
  told.textContent = text;
  told.hidden = !text;
}

/** The four questions; `take` gets the plan that follows. */
export function newLine(take) {
  const told = { length: fault(), fall: fault(), tallest: fault(), rider: fault() };
  const before = answered();
  const inputs = Object.fromEntries(
    Object.keys(USUAL).map((name) => [name, make("input", { value: shown(before[name], "length"), autocomplete: "off", spellcheck: false })]),
  );
  const { ages } = before;
  const age = make("select");
  for (let years = ages[0]; years <= ages[1]; years += 1) age.append(new Option(called(years, ages), years));
  age.value = before.age;
  const go = make("button", { type: "submit" }, words.go);
  const form = make(
    "form",
    { id: "new-line", noValidate: true },
    make("h3", {}, words.title),
    ...Object.keys(inputs).map((name) => field(name, inputs[name], told[name])),
    field("rider", age, told.rider),
    make("p", { className: "actions" }, go),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    for (const line of Object.values(told)) tell(line, "");
    const answers = { name: words.name };
    let readable = true;
    for (const [name, input] of Object.entries(inputs)) {
      try {
        answers[name] = parse(input.value, "length");
      } catch (sentence) {
        tell(told[name], sentence);
        readable = false;
      }
    }
    if (!readable) return;
    answers.mount = mountOf(Number(age.value), ages);
    try {
      const plan = draft(answers);
      const { length, fall, tallest } = answers;
      put("localStorage", KEY, { length, fall, tallest, age: Number(age.value) });
      take(plan);
    } catch (faults) {
      if (!Array.isArray(faults)) throw faults;
      for (const { field, why, least, most } of faults) {
        const at = told[field] ?? told.length;
        tell(at, least == null ? reason(why) : `${reason(why)}: ${shown(least, "length")} – ${shown(most, "length")}`);
      }
    }
  });
  return form;
}
