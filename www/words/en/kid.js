// What a ride is like for whoever rides: in words for a child.

// The load in words a child has, from none to much; and the speed.
export const feel = {
  weights: ["floating", "light", "normal", "pressed", "very heavy"],
  paces: ["standing", "walking pace", "jogging pace", "as fast as you run", "faster than you can run"],
  air: (seconds, height) => `${seconds} s in the air, ${height} up`,
};

export const cards = {
  flight: (height, far, seconds) => `Up to ${height} over the ground, ${far} far, ${seconds} in the air.`,
  lip: (times) => `In the lip you weigh as much as ${times} of you.`,
  // How hard a landing is, from soft to hard; the height written out.
  landing: {
    kerb: (drop) => `You land soft, like stepping off a kerb (a drop of ${drop}).`,
    stair: (drop) => `You land like hopping down one stair (a drop of ${drop}).`,
    chair: (drop) => `You land hard, like jumping off a chair (a drop of ${drop}).`,
    table: (drop) => `You land very hard, like jumping off a table (a drop of ${drop}). That is too much for a child.`,
  },
  // However low the drop: on the edge of the landing, or with legs that have nothing left to give.
  knuckle: "You come down on the edge of the landing: a hard knock from behind.",
  spent: (times) => `You land hard, as heavy as ${times} of you, and your legs have nothing left to give.`,
  not: (how) => `Not a jump to ride yet: ${how}.`,
  rules: [
    "Helmet on and buckled, pads on knees and elbows.",
    "A grown-up rides it first, every time something was changed.",
    "Look at the whole jump before you ride it. Not sure? Roll round it.",
    "Is the ground soft or wet? Then stop for today.",
  ],
};

export const whatIf = {
  intro: "Tap one and it rides along, pale.",
  // The button, and the label over the rider.
  kinds: {
    more: ["A push more", "push more"],
    less: ["A push less", "push less"],
    passive: ["Stiff as a board", "stiff"],
    absorbing: ["Soak up the bumps", "soaks up"],
    pumping: ["Pump", "pumps"],
    damp: ["Damp ground", "damp"],
    dry: ["Dry ground", "dry"],
  },
  same: (speed) => `${speed} at the lip, the same`,
  other: (speed, by, slower) => `${speed} at the lip, ${by} ${slower ? "slower" : "faster"}`,
  jump: (name, speed, how) => `${name}: ${speed}, ${how}`,
  never: (name, how) => `${name}: ${how}`,
  told: (label, jumps) => `${label}. ${jumps}.`,
};

export const sound = { on: "Sound on", off: "Sound off" };
