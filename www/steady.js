// What is being looked at stays where it is while rows above it come and go, also where the browser does not see to
// that by itself: some never do, some not under typing.

const SEEN_TO = CSS.supports("overflow-anchor", "auto");

// Where in the window something is looked at, as parts of its height: below the ride, above what lies at its foot.
const PLACES = [0.6, 0.7, 0.8];

/** What has the focus, where it is in sight. */
function focused() {
  const { activeElement: field } = document;
  const { top, bottom } = field.getBoundingClientRect();
  return field !== document.body && bottom > 0 && top < innerHeight ? field : null;
}

/** That, or else a line of text in the middle of the page. */
function looked() {
  const field = focused();
  if (field) return field;
  const there = PLACES.map((part) => document.elementFromPoint(innerWidth / 2, part * innerHeight));
  return there.find((element) => element && !element.childElementCount);
}

/** A text that is being typed. */
function typed() {
  const field = focused();
  return field?.matches("input:not([type])") ? field : null;
}

// For so long after a change a browser may scroll by itself, ms.
const AT_ONCE = 100;

/** Does what changes the page, and scrolls as far as that moved what is looked at. */
export function steadily(change) {
  const element = scrollY === 0 ? null : SEEN_TO ? typed() : looked();
  if (!element) return change();
  const { top } = element.getBoundingClientRect();
  const before = scrollY;
  const hold = () => {
    const off = element.isConnected ? element.getBoundingClientRect().top - top : 0;
    if (off) scrollBy({ top: off, behavior: "instant" });
  };
  change();
  hold();
  // Under typing the browser scrolls once more, to where the page stood before: that is taken back.
  const again = () => Math.abs(scrollY - before) < 1 && hold();
  addEventListener("scroll", again, { once: true });
  setTimeout(() => removeEventListener("scroll", again), AT_ONCE);
}
