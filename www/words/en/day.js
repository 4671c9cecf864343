// The test day, and what it teaches.

import { fields } from "./plan.js";

// The test day.
export const testDay = {
  intro: "Build and ride one jump at a time, from the first on. An adult goes first.",
  flag: (name, speed) => `${name}: at the flag by its edge see ${speed}.`,
  first: (gap, how) => `For the first tries set the lip nearer, gap ${gap}: then even a slow ride reaches the landing (a usual one: ${how}).`,
  measure: (tightest) => `Measure first what was dug. Tightest: ${tightest}.`,
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
  noStop: (speed, missing) => `Nobody rides this yet: the rider leaves the end at ${speed}${missing ? `, the run-out is ${missing} too short` : ""}.`,
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
    landed: "The mark of the rear wheel, measured level from the knuckle, the top of the landing. With a minus where it came up short. Where the front wheel lands first, the mark begins a little behind what the table of jumps says.",
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
  on: (name) => `On: ${name}`,
  planned: (value) => `The planned ride: ${value}`,
  add: "Add what you saw",
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
  lost: "What this teaches could not be worked out here. Load the page again where there is a connection.",
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
  fits: "All that you saw goes together, as well as it could be measured.",
  roughly: (times) => `What you saw goes together only roughly: it is ${times} times as far off as the measuring explains.`,
  few: "Few things were seen: what was planned still weighs much here.",
  tell: (more) => `This would tell more: ${more}.`,
  more: { flag: "a second time or speed", landing: "a landing" },
  one: (name) => `This does not go together: ${name} contradicts the rest. Without it the rest fits. Check it, or take it out.`,
  two: (names) => `This does not go together: ${names} contradict each other. One of them is wrong.`,
  many: (names) => `This does not go together. One of these is wrong, but any of them may be: ${names}.`,
  none: (names) => `This does not go together, and no single thing is to blame. Farthest off: ${names}.`,
  noneFar: "This does not go together, and no single thing is to blame.",
  rest: "For the rest of the line that means:",
  lip: (name, speed, by, planned) => `${name}: ${speed} at the lip, give or take ${by}${planned ? `; planned ${planned}` : ""}.`,
  // Why a lip comes out faster than the timing lets expect, or slower: of each input both.
  because: {
    rolling: ["the ground rolls lighter", "the ground rolls harder"],
    drag: ["the air holds the rider less", "the air holds the rider more"],
    start: ["the start was faster", "the start was slower"],
    skill: ["the rider pumps better", "the rider pumps less well"],
  },
  against: (faster, why) => `${faster ? "Faster, though timed slower" : "Slower, though timed faster"}: by what you saw, ${why} than planned, and that counts for more here.`,
  byChance: (faster, scatter) =>
    `${faster ? "Faster, though timed slower" : "Slower, though timed faster"}: at that pace the bike hops over what lies before it otherwise. Rides that are all but alike differ here by ${scatter}.`,
  // What would become of jumps that are clean as planned.
  spoils: (name, how) => `Mind before you use it: ${name} is clean as planned, but with this: ${how}.`,
  lessSure: (name, clean, tried, now) => `Mind before you use it: with this ${name} is clean in only ${clean} of ${tried} what-ifs, now in ${now}.`,
  narrower: "The range beside each speed is now what this ride left open, and the wind: this rider, this ground, ridden in this way. Another rider, or another day, is another matter.",
  same: "The plan already rides like this, as far as this ride can tell.",
  use: "Use this for the plan",
  used: "What was found now stands in the plan. Undo takes it back.",
  ranges: "Nineteen of twenty such ranges hold the true value, if the model is right. It tells of one day, and promises nothing.",
};
