// The test day on paper.

export const day = {
  adult: "An adult rides first, helmet and pads on. A child rides once every flag showed its speed, and can always say no.",
  surveyed: "For a surveyed line there is no order of building: ride each part slowly first.",
  noJumps: "No jump on this line yet.",
  before: "Before anybody rides",
  inspect: [
    "Every lip stands fast: pushed from all sides, anchored, nothing loose.",
    "Lip edge, gap, knuckle and landing measured against the sheets.",
    "Rails, stair and braces of the start ramp stand fast.",
    "No nail, screw, splinter or rod end stands out; no stone or tool on the ride.",
    "Ground dry and firm; no wind that moves thin branches.",
    "Landing and run-out free, nothing hard beside the line, dogs and small children away.",
    "Flags up; stopwatch, tape and this sheet at hand; a way round every jump.",
  ],
  gear: "What the rider wears",
  wear: ["Helmet, fitting and buckled; a full-face one for jumps.", "Gloves, knee and elbow pads; long sleeves; shoes that hold on the pedals.", "Bike looked over: brakes, headset, wheels fast, tyres at the pressure planned, chain, no stand or basket."],
  people: "Who stands where",
  stand: [
    "One at the start: lets one rider go at a time, after a call from below.",
    "One beside the jump being tried, off the line, on the side away from the fall: watches the wheels, never catches a rider.",
    "One at the run-out: says when it is free.",
    "A grown-up who can give first aid, with a telephone that works here, and knows the address of the yard.",
    "Everybody else behind the tape.",
  ],
  order: "In which order, and what each flag has to show",
  happened: "What happened",
  writeHow: "Write it down where you see it. Later type it in under “After a test ride”: the page then learns how your ground rolls. Places count level from the start to the middle of the bike.",
  rider: "Rider",
  note: "Note",
  minus: "Level from the knuckle to the mark of the rear wheel; with a minus where it came up short.",
  rolled: "Only without braking.",
};
