// The plan: its features, riders, yard and weather, and where their numbers come from.

export const kinds = {
  start_ramp: "Start ramp",
  flat: "Flat",
  roller: "Roller",
  jump: "Jump",
  turn: "Turn",
  run_out: "Run-out",
};

export const rollers = (first, last) => `Rollers ${first}–${last}`;
export const numbered = (kind, number) => `${kinds[kind]} ${number}`;

// A feature at a glance; `l` writes a length out.
export const digests = {
  start_ramp: (f, l) => `${l(f.platform_height)} high`,
  flat: (f, l) => `${l(f.length)} long`,
  roller: (f, l) => `${l(f.height)} high`,
  jump: (f, l) => `lip ${l(f.lip.height)}, gap ${l(f.gap)}`,
  turn: (f, l) => `radius ${l(f.radius)}`,
  run_out: (f, l) => `${l(f.length)} long`,
};

export const surfaces = {
  wood: "Wood",
  paved: "Paved",
  packed: "Packed dirt",
  gravel: "Gravel",
  grass: "Grass",
  soft: "Loose dirt",
};

// What is dug in, and what is built.
export const soils = { sand: "Sand", gravel: "Sand and pebbles", loam: "Garden earth", clay: "Clay" };

export const dig = {
  title: "To dig and build",
  intro: "None of this changes the ride. It decides how much is dug, sawn and hauled.",
  soil: "What you dig in",
  width: "Width",
  own: "Has a width of its own",
  lip: "Width of the lip",
  ownLip: "The lip has a width of its own",
  landing: "Width of the landing",
  ownLanding: "The landing has a width of its own",
  boxed: "Boards hold the landing's dirt",
  sheets: "Sheets to build from: stakes, cut lists, dirt, test day",
};

export const styles = { passive: "Stiff as a board", absorbing: "Soaks up bumps", pumping: "Pumps for speed" };
export const grounds = { dry: "Dry", damp: "Damp", soft: "Soft: stay off" };

export const act = {
  earlier: "Earlier",
  later: "Later",
  remove: "Remove",
  removeRider: "Take this rider out",
  add: "Add after this",
  less: (name) => `Less: ${name}`,
  more: (name) => `More: ${name}`,
};

export const cautions = {
  platform: "A fall from here hurts. Put rails round the platform.",
  gap: "A gap bites whoever comes short. A deck over it forgives.",
  soft: "Soft ground grabs wheels and ruts. Wait until it has dried.",
};

// A rider to start from.
export const preset = {
  legend: "Start from an age",
  age: "Age",
  years: (age, adult) => (adult ? `Adult (${age})` : `${age} years`),
  sex: "Growth chart",
  sexes: { either: "Middle of both", girl: "Girl or woman", boy: "Boy or man" },
  wheel: "Wheels",
  fitting: (inches) => `${inches}-inch, fits`,
  inches: (inches) => `${inches}-inch`,
  tread: "Tyres",
  treads: { smooth: "Low tread", knobby: "High knobs" },
  name: (age, adult) => (adult ? "Adult" : `${age < 13 ? "Child" : "Youth"}, ${age}`),
  again: (name, n) => `${name} (${n})`,
  line: (word, middle, likely) => `${word} ${middle}. ${likely}`,
  mass: "Weight",
  stature: "Height",
  from: "From the CDC growth charts 2000, undressed: add clothes and pads. Better still, weigh and measure your own rider. Every number can be changed below, and says where it is from.",
  replace: (label) => `Use for ${label}`,
  add: "Add as another rider",
};

export const likely = (low, high) => `Eight in ten lie between ${low} and ${high}.`;

// What the lines that come with the page, and their riders, are called: by the names in their files.
export const called = {
  "The orchard above the school": "The orchard above the school",
  "The first jump by the hen house": "The first jump by the hen house",
  "Three tables along the hedge": "Three tables along the hedge",
  "Child, 6": "Child, 6",
  "Child, 10": "Child, 10",
  "Youth, 14": "Youth, 14",
  Adult: "Adult",
};

// Where a number comes from.
export const sources = {
  growth_charts: "CDC growth charts 2000, undressed.",
  frontal_area: "Bassett and others 1999, from weight, height and stance; times 1.1, Gross and others 1983.",
  bead_seat: "ISO 5775.",
  knobby_tyre: "Gross, Kyle and Malewicki 1983: a knobby tyre on pavement.",
  course: "Maier and others 2018: a cross-country course.",
  knobby_to_course: "Between Gross and others 1983 and Maier and others 2018.",
  handbook: "Wilson, Bicycling Science, from memory.",
  common_practice: "Common practice, no source.",
};

export const groups = {
  lip: "Lip",
  gap: "Gap",
  landing: "Landing",
  rider: "Rider",
  bike: "Bike",
  wheels: "Wheels, and how they roll",
  rolling: "Rolling resistance, on dry ground (coefficient)",
  yard: "Yard",
  weather: "Weather",
  survey: (count) => `A surveyed line of ${count} points.`,
};

export const fields = {
  platform_height: "Platform height",
  angle_deg: "Steepness",
  bottom_radius: "Curve at the bottom (radius)",
  edge_radius: "Rounding at the top (radius)",
  push_off: "Push-off speed",
  surface: "Made of",
  length: "Length",
  height: "Height",
  count: "How many",
  radius: "Circle it is drawn with (radius)",
  lead_in: "Straight dirt ramp under the lip",
  lead_angle: "Ramp steepness",
  lead_length: "Ramp length",
  straight_end: "Ends in a straight stretch",
  straight_length: "Length of that stretch",
  gap: "Gap, lip to knuckle",
  decked: "Deck over the gap",
  knuckle: "Knuckle height",
  slope: "Slope",
  knuckle_radius: "Rounding of the knuckle (radius)",
  bed: "Ends on a raised bed",
  initial_speed: "Speed at the start",
  bed_length: "Length of the slope",
  sweep_deg: "How far round",
  bank_deg: "Bank",
  turn_radius: "Turn radius",
  label: "Who rides",
  name: "Name",
  style: "Over bumps",
  skill: "How well (0 to 1)",
  posture: "Stance (0 low, 1 tall)",
  mass: "Weight, dressed",
  stature: "Height",
  drag_area: "Wind area",
  bike_mass: "Bike weight",
  wheel_mass: "Weight of one wheel",
  wheel_inertia: "Inertia of one wheel",
  wheelbase: "Wheelbase",
  bead_seat: "Rim (bead seat diameter)",
  tyre_width: "Tyre width",
  tyre_pressure: "Tyre pressure",
  yard_length: "Length",
  limited: "Nothing too tall",
  tallest: "Nothing taller than",
  fall: "Fall from start to end",
  altitude: "Height over the sea",
  temperature: "Temperature",
  tailwind: "Wind from behind",
  ground: "Ground",
};
