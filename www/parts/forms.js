// Which fields each part of a plan has, group by group, in the order in which a builder asks.
// A field is [path, word, quantity] or [path, word, { choices }] or [path, word, { toggle }].

import { surfaces, styles, grounds, groups as g, fields as f, cautions } from "../words.js";

const surface = (path) => [path, f.surface, { choices: surfaces }];

const forms = {
  start_ramp: [
    [null, [
      ["platform_height", f.platform_height, "length", { caution: (v) => v > 1.2 && cautions.platform }],
      ["angle_deg", f.angle_deg, "angle"],
      ["bottom_radius", f.bottom_radius, "length"],
      ["edge_radius", f.edge_radius, "length"],
      ["push_off", f.push_off, "speed"],
      surface("surface"),
    ]],
  ],
  flat: [[null, [["length", f.length, "length"], surface("surface")]]],
  roller: [
    [null, [
      ["height", f.height, "length"],
      ["length", f.length, "length"],
      ["count", f.count, "count"],
      surface("surface"),
    ]],
  ],
  jump: [
    [g.lip, [
      ["lip.height", f.height, "length"],
      ["lip.radius", f.radius, "length"],
      surface("lip.surface"),
      ["lip.lead_in", f.lead_in, { toggle: { angle_deg: 15, length: 0.5 } }],
      ["lip.lead_in.angle_deg", f.lead_angle, "angle"],
      ["lip.lead_in.length", f.lead_length, "length"],
      ["lip.straight_end", f.straight_end, { toggle: 0.3 }],
      ["lip.straight_end", f.straight_length, "length"],
    ]],
    [g.gap, [
      ["gap", f.gap, "length", { caution: (v, feature) => v > 0.5 && !feature.decked && cautions.gap }],
      ["decked", f.decked, { toggle: true }],
    ]],
    [g.landing, [
      ["landing.height", f.knuckle, "length"],
      ["landing.angle_deg", f.slope, "angle"],
      ["landing.knuckle_radius", f.knuckle_radius, "length"],
      ["landing.bottom_radius", f.bottom_radius, "length"],
      ["landing.length", f.bed, { toggle: 1 }],
      ["landing.length", f.bed_length, "length"],
      surface("landing.surface"),
    ]],
  ],
  turn: [
    [null, [
      ["radius", f.turn_radius, "length"],
      ["sweep_deg", f.sweep_deg, "angle", { step: 5 }],
      ["bank_deg", f.bank_deg, "angle"],
      surface("surface"),
    ]],
  ],
  run_out: [[null, [["length", f.length, "length"], surface("surface")]]],
};

export const formOf = (feature) => forms[feature.kind];

export const riderForm = [
  [g.rider, [
    ["rider.style", f.style, { choices: styles }],
    ["rider.skill", f.skill, "number"],
    ["rider.mass", f.mass, "mass"],
    ["rider.stature", f.stature, "length"],
    ["rider.posture", f.posture, "number"],
    ["rider.drag_area", f.drag_area, "area"],
  ]],
  [g.bike, [
    ["bike.mass", f.bike_mass, "mass", { step: 0.5 }],
    ["bike.wheelbase", f.wheelbase, "length", { step: 0.2 }],
    ["bike.bead_seat", f.bead_seat, "length", { step: 0.02 }],
    ["bike.tyre_width", f.tyre_width, "length", { step: 0.02 }],
    ["bike.tyre_pressure", f.tyre_pressure, "pressure"],
  ]],
];

// What few will want to change.
export const wheelsForm = [
  [null, [
    ["bike.wheel_mass", f.wheel_mass, "mass", { step: 0.1 }],
    ["bike.wheel_inertia", f.wheel_inertia, "inertia"],
  ]],
  [g.rolling, Object.entries(surfaces).map(([key, word]) => [`bike.rolling.${key}`, word, "number", { step: 0.02 }])],
];

export const yardForm = [
  [null, [
    ["length", f.yard_length, "length", { step: 10 }],
    ["tallest", f.limited, { toggle: 2 }],
    ["tallest", f.tallest, "length"],
  ]],
];

// Only where no start ramp gives the speed.
export const startForm = [null, [["initial_speed", f.initial_speed, "speed"]]];

export const weatherForm = [
  [null, [
    ["ground", f.ground, { choices: grounds, caution: (v) => v === "soft" && cautions.soft }],
    ["tailwind", f.tailwind, "speed"],
    ["temperature", f.temperature, "temperature"],
    ["altitude", f.altitude, "length", { step: 1000 }],
  ]],
];

// The stature that these sizes fit, m: a child of ten.
const FIT = 1.39;

// What a new feature begins with, as tall as suits the rider's own height.
export const fresh = {
  flat: () => ({ kind: "flat", length: 2, surface: "packed" }),
  roller: (k) => ({ kind: "roller", height: 0.25 * k, length: 3 * k, count: 1, surface: "packed" }),
  jump: (k) => ({
    kind: "jump",
    lip: { height: 0.5 * k, radius: 3 * k, surface: "wood" },
    gap: 1 * k,
    decked: false,
    landing: { height: 0.5 * k, angle_deg: 22, knuckle_radius: 0.6, bottom_radius: 3, surface: "packed" },
  }),
  turn: () => ({ kind: "turn", radius: 4, sweep_deg: 90, bank_deg: 30, surface: "packed" }),
  start_ramp: (k) => ({ kind: "start_ramp", platform_height: 1.5 * k, angle_deg: 30, bottom_radius: 3, edge_radius: 0.8, push_off: 1, surface: "wood" }),
  run_out: () => ({ kind: "run_out", length: 8, surface: "grass" }),
};

/** A new feature for a rider of some stature, in figures that are whole to 5 cm. */
export function freshFor(kind, stature) {
  const round = (value) => (typeof value === "number" ? Number((Math.round(value / 0.05) * 0.05).toPrecision(12)) : value);
  const feature = fresh[kind](stature / FIT);
  for (const part of [feature, feature.lip, feature.landing]) {
    for (const [key, value] of Object.entries(part ?? {})) if (!key.endsWith("_deg") && key !== "count") part[key] = round(value);
  }
  return feature;
}
