// Adding what was seen on a test ride.

import { study } from "../carryline.js";
import { state } from "../state.js";
import { parse, shown } from "../units.js";
import { jumpNames, names } from "../names.js";
import { seen as words } from "../words.js";
import { make } from "./make.js";

// What each kind asks for, in the order in which it is measured; the last is what the ride teaches from.
export const asked = {
  time: [["from", "length"], ["to", "length"], ["seconds", "time"]],
  speed: [["at", "length"], ["speed", "speed"]],
  landed: [["jump", "jump"], ["past_knuckle", "length"]],
  stopped: [["at", "length"]],
};

// What the value that is measured is called, and what it is.
export const measured = { time: ["seconds", "time"], speed: ["speed", "speed"], landed: ["past_knuckle", "length"], stopped: ["at", "length"] };

// What stands for a value that is not typed yet: any that a plan accepts.
const ANY = { time: 1, speed: 1, landed: 0 };

// The usual uncertainty of each kind: the plan's own.
const USUAL = { time: 0.1, speed: 0.2, landed: 0.1, stopped: 0.3 };

/** The names of the jumps, by number. */
export const ofJumps = () => state.story.jumps.map(jumpNames(state.good));

/** Which feature lies at a place; nothing beyond the line. */
export function lies(x) {
  const i = state.story.features.findIndex((f) => x >= f.from && x <= f.to);
  const name = names(state.good)[i];
  return name ? words.on(name) : "";
}

/** What the planned ride shows of something seen, as it stands beside it once it is added; nothing where that is not known. */
function planned(observation) {
  const own = (state.good.seen ?? []).filter((seen) => !seen.rider);
  const value = study({ ...state.good, seen: [...own, observation] }, "planned").at(-1);
  return value == null ? "" : shown(value, measured[observation.kind][1]);
}

/** Flags where a builder would set them: behind the ramp, before the first lip. */
function usualPlaces() {
  const { features, jumps } = state.story;
  const first = features[0]?.to ?? 1;
  const lip = features[jumps[0]?.feature]?.from ?? features.at(-2)?.to ?? first + 5;
  return { from: shown(first, "length"), to: shown(Math.max(lip, first + 2), "length"), at: shown(lip, "length") };
}

function control(name, quantity, usual, change) {
  if (quantity === "jump") {
    const list = make("select", { id: `see-${name}` });
    ofJumps().forEach((text, i) => list.append(new Option(text, i)));
    list.addEventListener("change", change);
    return list;
  }
  const input = make("input", { id: `see-${name}`, autocomplete: "off", spellcheck: false, value: usual ?? "" });
  input.addEventListener("input", change);
  return input;
}

function field(kind, [name, quantity], usual, change) {
  const input = control(name, quantity, usual, change);
  const told = make("p", { className: "fault", id: `see-${name}-told`, hidden: true });
  const hint = make("p", { className: "from", id: `see-${name}-hint`, hidden: true });
  input.setAttribute("aria-describedby", `${told.id} ${hint.id}`);
  const label = make("label", { htmlFor: input.id }, words.fields[kind === "stopped" ? "stopped" : name]);
  return { name, quantity, input, told, hint, row: make("div", { className: "field" }, label, input, told, hint) };
}

const tell = (line, text) => {
  line.textContent = text;
  line.hidden = !text;
};

/** The fields of one kind, and a way to read them. */
function fieldsOf(kind) {
  const places = kind === "stopped" ? {} : usualPlaces();
  const fields = asked[kind].map((one) => field(kind, one, places[one[0]], () => hint()));
  const value = (name) => {
    const { quantity, input } = fields.find((f) => f.name === name);
    return quantity === "jump" ? Number(input.value) : parse(input.value, quantity);
  };
  const quietly = (get) => {
    try {
      return get();
    } catch {
      return "";
    }
  };
  function hint() {
    for (const { name, quantity, hint } of fields) if (quantity === "length" && name !== "past_knuckle") tell(hint, quietly(() => lies(value(name))));
    const [name] = measured[kind];
    const where = () => Object.fromEntries(fields.map((f) => [f.name, f.name === name && kind in ANY ? ANY[kind] : value(f.name)]));
    const ride = quietly(() => planned({ kind, ...where(), give_or_take: USUAL[kind] }));
    const lie = kind === "stopped" ? quietly(() => lies(value("at"))) : "";
    tell(fields.at(-1).hint, [lie, ride && words.planned(ride)].filter(Boolean).join(". "));
  }
  hint();
  const read = () => {
    let readable = true;
    const observation = { kind };
    for (const { name, quantity, input, told } of fields) {
      tell(told, "");
      input.removeAttribute("aria-invalid");
      try {
        observation[name] = quantity === "jump" ? Number(input.value) : parse(input.value, quantity);
      } catch (sentence) {
        tell(told, sentence);
        input.setAttribute("aria-invalid", "true");
        if (readable) input.focus();
        readable = false;
      }
    }
    return readable ? { ...observation, give_or_take: USUAL[kind] } : null;
  };
  return { rows: fields.map((f) => f.row), read, first: fields[0].input };
}

/** The form; `take` gets each observation. */
export function seenForm(take) {
  const jumps = state.story.jumps.length > 0;
  const kinds = Object.keys(asked).filter((kind) => kind !== "landed" || jumps);
  const box = make("div", { className: "group" });
  let fields = null;
  const show = (kind) => {
    fields = fieldsOf(kind);
    box.replaceChildren(make("p", { className: "from" }, `${words.how[kind]}${kind === "landed" ? "" : ` ${words.places}`}`), ...fields.rows);
  };
  const choice = make("fieldset", { className: "riders" }, make("legend", {}, words.what));
  for (const kind of kinds) {
    const input = make("input", { type: "radio", name: "see-kind", value: kind, checked: kind === kinds[0] });
    input.addEventListener("change", () => show(kind));
    choice.append(make("label", {}, input, make("span", {}, words.kinds[kind])));
  }
  show(kinds[0]);
  const go = make("button", { type: "submit", id: "see-add" }, words.add);
  const form = make("form", { id: "see", noValidate: true }, choice, box, make("p", { className: "actions" }, go));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const observation = fields.read();
    if (observation) take(observation);
  });
  return form;
}
