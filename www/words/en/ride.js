// What a ride means: each jump, the line, where the speed goes.

export const noJumps = "No jump on this line yet.";
export const allClean = (count) => (count === 1 ? "As planned the jump lands clean." : `As planned all ${count} jumps land clean.`);
export const look = (names) => `Look at ${names}.`;
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
// How far what is dug for a jump may be off: the tightest first; lengths written out, 0 where there is none.
export const dug = {
  kinds: {
    start: ["start", "higher", "lower"],
    flat: ["each flat", "longer", "shorter"],
    roller: ["each roller", "higher", "lower"],
    lip_height: ["lip height", "higher", "lower"],
    lip_radius: ["lip radius", "larger", "smaller"],
    gap: ["gap", "longer", "shorter"],
  },
  limit: ([kind, more, less], isMore, most) => `${kind}, ${most ? `${most} ${isMore ? more : less} at most` : `not the least bit ${isMore ? more : less}`}`,
  beyond: (limit, how) => `${limit} (beyond: ${how})`,
  told: (tightest, rest, looked) =>
    tightest
      ? `As dug, tightest: ${tightest}.${rest.length ? ` Then: ${rest.join("; ")}.` : ""} Each alone, all else as planned; what is not named may be ${looked} off.`
      : `As dug: start, flats, rollers, lip and gap may each be ${looked} off.`,
};
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

// Words of the trade as they stand in these texts, and what they mean.
export const terms = {
  knuckle: ["knuckle", "The knuckle is the top edge of the landing, where its slope begins. Both wheels should come down behind it."],
  short: ["cases", "To case is to hit the front or the top of the landing with the rear wheel, because the jump was too short."],
  decked: ["deck", "The deck is the boards over the gap. Who comes short rolls on over them."],
  deep: ["deep", "Deep is so far down the slope that little of it is left: a bit faster, and you land in the flat."],
  lip: ["lip", "The lip is the curved end of a jump, which throws you into the air."],
  gap: ["gap", "The gap is what you fly over: level from the edge of the lip to the knuckle of the landing."],
  roller: ["roller", "A roller is a round bump that both wheels stay on. Who presses behind its top and goes light before the next gains speed."],
  run_out: ["run-out", "The run-out is the level stretch behind the last jump, where the rider rolls or brakes to a stand."],
  tries: ["what-ifs", "In a what-if the line is ridden again with one thing a little other: push, ground, wind, tyres, rider. It shows how sure a jump is."],
  pumping: ["pump", "To pump is to press down where the ground falls away and to go light where it rises. It makes speed without pedals."],
  travel_left: ["leg travel", "Leg travel is how far the knees can still bend. With none left, the landing goes through to the body."],
  wheelbase: ["wheelbase", "The wheelbase is the distance between the two axles."],
  bead_seat: ["bead seat", "The bead seat is where the tyre sits in the rim. Its diameter is printed on the tyre, as the 406 in 50-406."],
  drag_area: ["wind area", "The wind area says how much wind the rider catches: small when crouched, large when upright."],
  bank_deg: ["bank", "A turn is banked where its ground leans inward, so that the wheels hold."],
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
export const tooSlow = { short: "slower: short", knuckle: "slower: knuckle", crashed: "slower: crash", other: "slower: not there" };
export const tooFast = { deep: "faster: deep", past: "faster: past it", crashed: "faster: crash", other: "faster: not tried" };
export const sureOfAll = (tried) => `So they do in all ${tried} what-ifs.`;
export const sureOfIt = (tried) => `So it does in all ${tried} what-ifs.`;
export const leastSure = (name, clean, tried) => `${name} is the least sure: clean in ${clean} of ${tried} what-ifs.`;
export const pitched = (turn, high) => (turn < 1 ? "in line with the slope" : `nose ${turn}° ${high ? "high" : "low"}`);
export const impact = (first, g, left, pitch, drop) =>
  `${first === "rear" ? "Rear" : "Front"} wheel first, ${pitch}; up to ${g} times body weight, ${left} of leg travel left; like a drop of ${drop}.`;
export const landingLost = (head, speed) =>
  speed ? `Landing takes ${head} of height: ${speed} at the next lip.` : `Landing takes ${head} of height from what comes next.`;
export const suggest = {
  gap: (now, then) => `With a gap of ${then} in place of ${now} it lands clean.`,
  platform: (now, then) => `With the start at ${then} in place of ${now} it lands clean.`,
};
// How the line ends, in the table.
export const ending = {
  stands: (left) => `Comes to a stand ${left} before the end.`,
  leaves: (missing) => `Still rolling at the end${missing ? `: the run-out is ${missing} too short` : ""}.`,
  never: "Not reached.",
};
export const tryIt = "Try it";
export const otherAt = (who, speed, how) => (speed ? `${who}: ${speed} at the lip, ${how}.` : `${who}: ${how}.`);
export const noProof = (who, first) => `That it works for ${who} says nothing for ${first} here.`;
export const apart = (first, by, slower) => `${first} comes ${by} ${slower ? "slower" : "faster"}.`;
// Why one rider arrives faster than another: what was taken from each up to the first lip, as heights.
export const why = (who, first, lip, parts) =>
  `Up to the lip of ${lip}, ${first} and ${who}: ${parts.map(([what, a, b]) => `${what} ${a} and ${b}`).join(", ")}.`;
export const whyParts = { rolling: "rolling takes", drag: "the air takes", body: "tyres, legs and hops take", given: "legs give back" };
// Where the speed goes.
export const tolls = {
  all: (names, lip, speed) => `${names}: with flat ground in their place the lip of ${lip} comes ${speed} faster.`,
  fewer: (speed) => `One fewer gives ${speed} back.`,
  higher: (height) => `A start ${height} higher makes up for them.`,
  gives: (names, lip, speed) => `${names}: give speed. The lip of ${lip} comes ${speed} faster than with flat ground in their place.`,
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
// What rollers take one by one: a list of lengths written out.
export const oneByOne = (heights) => `One by one ${heights}.`;
export const takes = (height, speed, gained) => {
  if (gained) return `${height}, and yet ${gained} more at the next lip`;
  return speed ? `${height}, ${speed} at the next lip` : height;
};
export const gives = (height, gained) => (gained ? `gives ${height}, ${gained} more at the next lip` : `gives ${height}`);
// What comes back where another ride would lose it.
export const back = (cause, height) => `${cause}: ${height} back`;

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
  stands: (who, s) => `${who} rides the whole line in ${s} seconds and comes to a stand.`,
  leaves: (who, s, speed) => `${who} rides the whole line in ${s} seconds, but leaves its end at ${speed}.`,
  stalled: (who, where, missing) => `${who} rolls back at ${where}: ${missing} too slow to get over it.`,
  crashed: (who, where, why) => `${who} crashes at ${where}: ${why}.`,
  timed_out: (who) => `${who} is still rolling after two minutes.`,
  broken_off: (who, s) => `${who}'s ride is broken off after ${s} seconds: it takes too many steps to work out.`,
};
