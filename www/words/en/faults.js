// What is wrong, and what would be accepted.

export const faults = {
  held: "The drawing still shows the last line that works.",
  given: (given) => `given ${given}`,
  between: (a, b) => `use ${a} to ${b}`,
  least: (a) => `use ${a} or more`,
  most: (b) => `use ${b} or less`,
  show: (name) => `Show ${name}`,
};
