// What the page says by itself: its buttons, panels, and what it reports.

// What stands in the page itself, in `index.html`.
export const page = {
  units: "Units",
  metres: "Metres",
  feet: "Feet",
  send: "Send",
  name: "Name of the line",
  what: "Your jump line, ridden before you dig it. Tap a feature to change it. Send the line to a friend.",
  ride: "The ride",
  drawing: "Side view of the line with the rider on it",
  saddle: "The line ahead, as the rider sees it",
  moment: "Moment of the ride",
  watch: "Watch the ride",
  restart: "Restart",
  whole: "Whole line",
  result: "How it went",
  sent: "Somebody sent you this line.",
  keep: "Edit a copy",
  stop: "Stop comparing",
  begin: "Start a line of your own:",
  answers: "From four answers",
  example: "From an example",
  empty: "In an empty yard",
  jumps: "The jumps, one by one",
  range: "May be",
  exit: "Leaves at",
  airtime: "In the air",
  wheels: "Wheels come down",
  caution: "Worked out, not measured. An adult rides it first, helmet and pads on, and checks the speed at each lip before a child does. Local rules come first.",
  costs: "Where the speed goes",
  feature: "Feature",
  takes: "Takes",
  causes: "From what",
  feels: "What each jump feels like",
  whatIf: "What if…",
  testDay: "Test day",
  seen: "After a test ride",
  limits: "How this is worked out, and what it leaves out",
  plan: "The plan",
  means: "What it means",
  steps: "Undo and redo",
  undo: "Undo",
  redo: "Redo",
  lines: "My lines",
};

// The string along the page: its pegs, and the tag that hangs on it while fields are open.
export const ways = {
  all: "On this page",
  ride: "Ride",
  result: "Verdict",
  plan: "Plan",
  means: "Meaning",
  jump: (name, speed, how) => (speed ? `${name}: ${speed}, ${how}` : `${name}: ${how}`),
  unready: "Cannot be ridden yet: show why",
};

// What stands beside a thing by its look.
export const styled = { mend: "mend this", at: "at" };

export const play = { ride: "Ride", pause: "Pause", again: "Again" };
// How fast the ride goes by, and from where it can be seen.
export const pace = { full: "Full speed", air: "Slow in the air", slow: "Slow" };
export const view = { side: "From the side", saddle: "From the saddle" };
export const state = { air: "in the air" };

// What stands before the tenths.
export const point = ".";
export const seconds = (s) => `${s} s`;
export const degrees = (degrees) => `${degrees}°`;

export const energyLine = "speed as height";
// The last feature in the drawing, where the rider rolls over its end.
export const rolling = (name, speed) => `${name}: still ${speed} at its end`;

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
  unread: (count) => `${count === 1 ? "One line" : `${count} lines`} kept on this device cannot be read by this version of the page. Nothing of that is lost; a newer version may read it.`,
  starts: "Lines to start from",
  save: "Save as a file",
  load: "Open a file",
  noFile: (why, field) => `That file is no plan: ${why} (${field}).`,
  empty: "An empty yard",
};

export const damaged = (why) => `The link did not work: ${why}. Here is the demo line instead.`;
export const otherModel = (made, now) =>
  made < now
    ? `This link was made with ride model ${made}. Here it is ridden with model ${now}: the speeds may differ from those its sender saw.`
    : `This link was made with a newer ride model (${made}); this page has model ${now}. Load the page again to get the newer one.`;
export const model = (version) => `Ride model ${version}`;
export const broken = "The page could not start. Load it again.";

// A newer version of the page has come.
export const newer = "A newer version is ready: load again. ";
export const loadAgain = "Load again";
