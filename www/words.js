// Every word that the page says, in one place: another language is another file like this one.

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

export const styles = { passive: "Stiff as a board", absorbing: "Soaks up bumps", pumping: "Pumps for speed" };
export const grounds = { dry: "Dry", damp: "Damp", soft: "Soft: stay off" };

export const play = { ride: "Ride", pause: "Pause", again: "Again" };
export const state = { air: "in the air", ground: "on the ground" };

export const noJumps = "No jump on this line yet.";
export const allClean = (count) => (count === 1 ? "The jump lands clean." : `All ${count} jumps land clean.`);
export const look = (names) => `Look at ${new Intl.ListFormat("en").format(names)}.`;
// Where the wheels came down against the knuckle: lengths written out, and whether each is short.
export const wheels = (rear, rearShort, front, frontShort) => {
  const where = (short) => (short ? "short of" : "past");
  const first = rearShort === frontShort ? "" : ` ${where(rearShort)} it`;
  return `rear wheel ${rear}${first}, front ${front} ${where(frontShort)} the knuckle`;
};
// A speed's range, both ends written out, the unit behind the second.
export const range = (slowest, fastest, unit) => `${slowest} to ${fastest} ${unit}`;
// What becomes of a jump where the things nobody knows well are a little off.
export const tries = ({ tried, left, clean, short, far, crashed }) => {
  if (clean === tried) return `Still clean in all ${tried} what-ifs.`;
  const other = { short, long: far, "a crash": crashed, "never there": tried - left };
  const rest = Object.entries(other).flatMap(([what, count]) => (count ? `${what} in ${count}` : []));
  return `Clean in ${clean} of ${tried} what-ifs${rest.length ? `; ${rest.join(", ")}` : ""}.`;
};
export const seconds = (s) => `${s.toFixed(2)} s`;
export const degrees = (rad) => `${Math.round((rad * 180) / Math.PI)}°`;

// How a jump went, by the judge's word for it; `by` is a length already written out.
export const how = {
  clean: () => "Clean: both wheels land on the slope.",
  short: (by, decked) =>
    by ? `Comes up ${by} short: the rear wheel ${decked ? "lands on the deck" : "cases on the face of the landing"}.` : "Rolls over the lip without flying.",
  knuckle: () => "On the knuckle: a hard knock for the rear wheel.",
  deep: () => "Deep: near the end of the slope.",
  past: () => "Past the landing: flat and hard.",
  crashed: () => "Crash.",
  stalled: () => "Rolls back before the lip: too slow.",
  not_reached: () => "Not reached.",
};

// The same at a glance.
export const howShort = {
  clean: "clean",
  short: "comes up short",
  knuckle: "on the knuckle",
  deep: "deep",
  past: "past the landing",
  crashed: "crashes",
  stalled: "rolls back",
  not_reached: "does not get there",
};

// The window of speeds in which a jump works, and what happens at either end of it.
export const window = (slowest, fastest) => `Works from ${slowest} to ${fastest}.`;
export const noWindow = "No speed works here: look at gap and landing.";
export const spare = (below, above) => `To spare: ${below} slower, ${above} faster.`;
export const missing = (by) => `This ride is ${by} too slow.`;
export const over = (by) => `This ride is ${by} too fast.`;
const slower = { short: "slower: short", knuckle: "slower: knuckle", crashed: "slower: crash" };
export const tooSlow = new Proxy(slower, { get: (all, how) => all[how] ?? "slower: not there" });
const faster = { deep: "faster: deep", past: "faster: past it", crashed: "faster: crash" };
export const tooFast = new Proxy(faster, { get: (all, how) => all[how] ?? "faster: not tried" });
export const weakest = (name, left) => `${name} has the least to spare: ${left}.`;
export const pitched = (rad) => {
  const turn = Math.round((Math.abs(rad) * 180) / Math.PI);
  if (turn < 1) return "in line with the slope";
  return `nose ${turn}° ${rad > 0 ? "high" : "low"}`;
};
export const impact = (first, g, left, pitch, drop) =>
  `${first === "rear" ? "Rear" : "Front"} wheel first, ${pitch}; up to ${g} times body weight, ${left} of leg travel left; like a drop of ${drop}.`;
export const landingLost = (head, speed) =>
  speed ? `Landing takes ${head} of height: ${speed} at the next lip.` : `Landing takes ${head} of height from what comes next.`;
export const suggest = {
  gap: (now, then) => `With a gap of ${then} in place of ${now} it lands clean.`,
  platform: (now, then) => `With the start at ${then} in place of ${now} it lands clean.`,
};
export const tryIt = "Try it";
export const otherAt = (who, speed, how) => (speed ? `${who}: ${speed} at the lip, ${how}.` : `${who}: ${how}.`);
export const noProof = (who, first) => `That it works for ${who} says nothing for ${first} here.`;
export const apart = (first, by, slower) => `${first} comes ${by} ${slower ? "slower" : "faster"}.`;
// Why one rider arrives faster than another: what was taken from each up to the first lip, as heights.
export const why = (who, first, lip, parts) =>
  `Up to the lip of ${lip}, ${first} and ${who}: ${parts.map(([what, a, b]) => `${what} ${a} and ${b}`).join(", ")}.`;
export const whyParts = { rolling: "rolling takes", drag: "the air takes", body: "tyres, legs and hops take", given: "legs give back" };
export const energyLine = "speed as height";

// Where the speed goes.
export const tolls = {
  all: (names, lip, speed) => `${names}: with flat ground in their place the lip of ${lip} comes ${speed} faster.`,
  fewer: (speed) => `One fewer gives ${speed} back.`,
  higher: (height) => `A start ${height} higher makes up for them.`,
  none: (names) => `${names}: cost nothing that shows at the next lip.`,
  intro: "How much height of start ramp each feature uses up, and what that height is worth at the next lip.",
  blocked: (names, lip) => `${names}: without them ${lip} would be reached.`,
};
export const causes = {
  rolling: "rolling",
  drag: "air",
  landing: "landing",
  tyres: "tyres",
  legs: "legs",
  turning: "turning",
  braking: "brake",
};
export const given = (height) => `legs give ${height} back`;
export const takes = (height, speed) => (speed ? `${height}, ${speed} at the next lip` : height);
export const gives = (height) => `gives ${height}`;

// The test day.
export const testDay = {
  intro: "Build and ride one jump at a time, from the first on. An adult goes first.",
  flag: (name, speed) => `${name}: at the flag by its edge see ${speed}.`,
  first: (gap, how) => `For the first tries set the lip nearer, gap ${gap}: then even a slow ride reaches the landing (a usual one: ${how}).`,
  alone: (speed) => `Ridden alone, before the others are built, it works the same (${speed}).`,
  notAlone: (speed, how) => `Not to be ridden alone: without the jumps before it the rider comes at ${speed}: ${how}.`,
  wind: (head, tail) =>
    head && tail
      ? `Stop when the wind blows along the line: ${head} from ahead or ${tail} from behind already spoils a jump.`
      : head
        ? `Stop at a wind of ${head} from ahead.`
        : tail
          ? `Stop at a wind of ${tail} from behind.`
          : "Wind along the line up to a fresh breeze spoils no jump here. Gusts from the side are another matter.",
  damp: "Damp ground already spoils a jump: wait until it is dry.",
  soft: "Soft ground: stop for the day, whatever the figures say.",
  unfit: "A jump that is not clean on paper is not ridden. Change it first.",
};

export const seen = {
  intro: "Somebody has ridden the line as it is planned here? Type in what you saw with stopwatch, flags and tape. The page finds out how your ground rolls and how hard the push was.",
  places: "Places count level along the line, from its very start to the middle of the bike.",
  what: "What did you see?",
  kinds: { time: "Time between flags", speed: "Speed at a place", landed: "Where the wheels came down", stopped: "Where it came to a stand" },
  how: {
    time: "From one flag to another, by stopwatch or film. The first may be the start itself: place 0.",
    speed: "By film, or by a speedometer.",
    landed: "The mark of the rear wheel, measured level from the knuckle, the top of the landing. With a minus where it came up short.",
    stopped: "Where the rider rolled back on a rise, or rolled out to. Only without braking.",
  },
  fields: {
    from: "First flag",
    to: "Second flag",
    seconds: "Time between them",
    at: "Place",
    speed: "Speed there",
    jump: "Jump",
    past_knuckle: "Past the knuckle",
    stopped: "Came to a stand at",
    give_or_take: "Give or take",
  },
  jump: (number) => `${kinds.jump} ${number}`,
  on: (name) => `On: ${name}`,
  planned: (value) => `The planned ride: ${value}`,
  add: "Add what you saw",
  most: 24,
  full: "That is as much as the page can weigh. Take something out to add more.",
  named: {
    time: (from, to) => `the time from ${from} to ${to}`,
    speed: (at) => `the speed at ${at}`,
    landed: (jump) => `the landing at ${jump}`,
    stopped: (at) => `the stand at ${at}`,
  },
  valued: (name, value) => `${name} (${value})`,
  first: "Nothing is learnt before that is mended.",
  beside: (planned, found) => `Planned ride: ${planned}. Ride that fits best: ${found}.`,
  never: "never there",
  scatter: (by) => `Rides that are all but alike differ here by ${by}: it tells little.`,
  other: (label) => `Ridden by ${label}. Choose ${label} under “${fields.label}” to see what it teaches.`,
  unused: {
    off_the_line: "Not used: there is no such place on this line.",
    braking: "Not used: the rider brakes here, and nobody knows how hard.",
    never_there: "Not used: the ride never gets there.",
  },
  doubted: "This one does not go with the others.",
  far: "This one is far off.",
  working: "Looking for what fits. That takes some seconds.",
  nothing: "Nothing here can be used to learn from.",
  input: {
    rolling: (value, _, low, high, sure) =>
      sure ? `Your ground rolls about ${value} times as hard as planned (${low} to ${high}).` : `how your ground rolls: perhaps ${value} times as hard as planned, but anything from ${low} to ${high}`,
    drag: (value, _, low, high, sure) =>
      sure ? `The air holds the rider about ${value} times as much as planned (${low} to ${high}).` : `how the air holds the rider: perhaps ${value} times as much as planned, but anything from ${low} to ${high}`,
    start: (value, planned, low, high, sure) =>
      sure ? `The start was at about ${value}, planned ${planned} (${low} to ${high}).` : `the speed at the start: perhaps ${value}, planned ${planned}, but anything from ${low} to ${high}`,
    skill: (value, planned, low, high, sure) =>
      sure ? `The rider pumps about ${value} of 1, planned ${planned} (${low} to ${high}).` : `how well the rider pumps: perhaps ${value} of 1, planned ${planned}, but anything from ${low} to ${high}`,
  },
  unsure: "What you saw says little about:",
  fits: (misfit) =>
    misfit < 1.5 ? "All that you saw goes together, as well as it could be measured." : `What you saw goes together only roughly: it is ${misfit.toFixed(1)} times as far off as the measuring explains.`,
  few: "Few things were seen: what was planned still weighs much here. A second flag, or a landing, would tell more.",
  one: (name) => `This does not go together: ${name} contradicts the rest. Without it the rest fits. Check it, or take it out.`,
  two: (names) => `This does not go together: ${names} contradict each other. One of them is wrong.`,
  many: (names) => `This does not go together. One of these is wrong, but any of them may be: ${names}.`,
  none: (names) => `This does not go together, and no single thing is to blame. Farthest off: ${names}.`,
  noneFar: "This does not go together, and no single thing is to blame.",
  rest: "For the rest of the line that means:",
  lip: (name, speed, by, planned) => `${name}: ${speed} at the lip, give or take ${by}${planned ? `; planned ${planned}` : ""}.`,
  same: "The plan already rides like this, as far as this ride can tell.",
  use: "Use this for the plan",
  used: "What was found now stands in the plan. Undo takes it back.",
  ranges: "Nineteen of twenty such ranges hold the true value, if the model is right. It tells of one day, and promises nothing.",
};

export const hard = (drop) => `Hits as hard as a drop of ${drop}. Make the slope meet the flight.`;

export const crashes = {
  frame_hit: "the frame hits the ground",
  rider_hit: "the rider hits the ground",
  over_the_bars: "goes over the bars",
  looped_out: "falls off the back",
  too_hard: "lands too hard to hold on",
  lost: "the numbers ran away here",
};

export const told = {
  finished: (who, s) => `${who} rides the whole line in ${s} seconds.`,
  stalled: (who, where, missing) => `${who} rolls back at ${where}: ${missing} too slow to get over it.`,
  crashed: (who, where, why) => `${who} crashes at ${where}: ${why}.`,
  timed_out: (who) => `${who} is still rolling after two minutes.`,
  lip: (name, speed, how) => `${name}: ${speed} at the lip. ${how}`,
};

export const faults = {
  held: "The drawing still shows the last line that works.",
  given: (given) => `given ${given}`,
  between: (a, b) => `use ${a} to ${b}`,
  least: (a) => `use ${a} or more`,
  most: (b) => `use ${b} or less`,
  show: (name) => `Show ${name}`,
};

export const share = {
  title: "Send this line",
  what: "The link holds the whole line. Whoever opens it sees this very line, and keeps their own.",
  send: "Send to somebody",
  copy: "Copy the link",
  copied: "Link copied.",
  byHand: "Copy this link:",
  code: "Or point another phone's camera here.",
  codeName: "The link as a QR code",
  long: "This line is too long for a QR code. Copy the link.",
  save: "Save",
  png: "Picture (PNG)",
  svg: "Picture (SVG)",
  csv: "Figures (CSV)",
  json: "Plan (JSON)",
  saved: (name) => `Saved as ${name}.`,
  failed: "That did not work here.",
  close: "Close",
  faulty: "Mend the marked numbers first: only a line that works can be sent.",
  text: (name, speeds, caution) => `${name}. ${speeds ? `Speed at the lips: ${speeds}. ` : ""}${caution}`,
  lip: (name, speed) => `${name} ${speed}`,
};

// The whole line as a picture.
export const picture = {
  legend: (unit) => `Under each lip its speed in ${unit} and the range this may lie in. The thin line on top is speed as height.`,
};

// The jumps as a table for a spreadsheet.
export const table = {
  rider: "Rider",
  jump: "Jump",
  speed: "Speed at the lip",
  slowest: "May be from",
  fastest: "May be to",
  worksFrom: "Works from",
  worksTo: "Works to",
  exit: "Leaves at (°)",
  airtime: "In the air (s)",
  rear: "Rear wheel past the knuckle",
  front: "Front wheel past the knuckle",
  drop: "Like a drop of",
  how: "How it went",
  heading: (what, unit) => `${what} (${unit})`,
  caution: "Worked out, not measured",
};

// The yard's ground as readings.
export const readings = {
  title: "Ground readings",
  label: (unit) => `Station and height, one reading in a row, in ${unit}. Type them or paste two columns.`,
  use: "Use these readings",
  save: "Save readings (CSV)",
  even: "One even fall instead",
  station: "Station",
  height: "Height",
  few: "Two readings or more are wanted.",
  more: (count) => `And ${count} more rows.`,
  at: (row) => `Reading ${row}: `,
};

// A first line from four answers.
export const newLine = {
  title: "A new line from four answers",
  name: "A new line",
  length: "How long is the yard?",
  fall: "How far does it fall from start to end?",
  tallest: "How tall may the tallest thing be?",
  rider: "Who rides?",
  go: "Draw it",
};

// What the ride feels like: the load in words a child has, from none to much; and the speed.
export const feel = {
  weights: ["floating", "light", "normal", "pressed", "very heavy"],
  paces: ["standing", "walking pace", "jogging pace", "as fast as you run", "faster than you can run"],
  air: (seconds, height) => `${seconds} s in the air, ${height} up`,
};

// What can be taken hold of on the drawing.
export const grips = {
  platform: "Start platform: drag up or down",
  top: "Top of the roller: drag up or down",
  lip: "Edge of the lip: drag it, or use the arrow keys",
  knuckle: "Knuckle of the landing: drag it, or use the arrow keys",
};

// The reader's own lines.
export const lines = {
  none: "None yet. A line is kept on this device as soon as you change it.",
  here: "open now",
  unnamed: "A line without a name",
  open: "Open",
  copy: "Copy",
  remove: "Remove",
  compare: "Compare",
  comparedWith: (name) => `Drawn pale beneath: ${name}.`,
  faulty: (name) => `${name} cannot be ridden as it is.`,
  removed: (name) => `${name} is removed. `,
  bring: "Bring it back",
  second: (name) => `${name} 2`.slice(0, 60),
  taken: "This line was changed in another tab. What you change here is kept as a second line.",
  full: "This device has no room left to keep lines. Send yourself the link: it holds the whole line.",
  starts: "Lines to start from",
  save: "Save as a file",
  load: "Open a file",
  noFile: (why) => `That file is no plan: ${why}.`,
};

export const damaged = (why) => `The link did not work: ${why}. Here is the demo line instead.`;
export const otherModel = (made, now) =>
  made < now
    ? `This link was made with ride model ${made}. Here it is ridden with model ${now}: the speeds may differ from those its sender saw.`
    : `This link was made with a newer ride model (${made}); this page has model ${now}. Load the page again to get the newer one.`;
export const model = (version) => `Ride model ${version}`;
export const broken = "The page could not start. Load it again.";
export const newer = "A newer version is ready: load again. ";
export const loadAgain = "Load again";

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
  fall: "Fall from start to end",
  altitude: "Height over the sea",
  temperature: "Temperature",
  tailwind: "Wind from behind",
  ground: "Ground",
};
