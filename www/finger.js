// What would be renewed unasked waits until no finger is on the page: a tap counts where what was pressed is
// still there once it is let go.

// How long after a finger is lifted its click may come, ms.
const CLICK = 300;

const fingers = new Set();
let waiting = [];
let lifted = 0; // the timer of a click that may come yet

function free() {
  clearTimeout(lifted);
  lifted = 0;
  const now = waiting;
  waiting = [];
  for (const then of now) then();
}

function press(event) {
  if (event.button === 0) fingers.add(event.pointerId);
}

/** A finger is gone; `rest` is how long its click may take, ms. */
function lift(event, rest) {
  if (!fingers.delete(event.pointerId) || fingers.size) return;
  clearTimeout(lifted);
  lifted = setTimeout(free, rest);
}

/** Does something at once, or as soon as no finger is on the page; one after the other, in their order. */
export function unlessHeld(then) {
  if (fingers.size || lifted || waiting.length) waiting.push(then);
  else then();
}

addEventListener("pointerdown", press, true);
addEventListener("pointerup", (event) => lift(event, CLICK), true);
addEventListener("pointercancel", (event) => lift(event, 0), true);
// Not every finger is seen to be lifted, as over a list of the system's own.
addEventListener("pointermove", (event) => fingers.size && !event.buttons && lift(event, 0), true);
addEventListener("blur", () => (fingers.clear(), free()));
// The click has its element by now; what it changes is changed before.
addEventListener("click", () => lifted && setTimeout(free), true);
