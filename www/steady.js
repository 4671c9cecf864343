// What is being looked at stays where it is while rows above it come and go, also where the browser does not see to
// that by itself.

const SEEN_TO = CSS.supports("overflow-anchor", "auto");

// Where in the window something is looked at, as parts of its height: below the ride, above what lies at its foot.
const PLACES = [0.6, 0.7, 0.8];

/** The field that is edited, where it is in sight, or else a line of text in the middle of the page. */
function looked() {
  const { activeElement: field } = document;
  const { top, bottom } = field.getBoundingClientRect();
  if (field !== document.body && bottom > 0 && top < innerHeight) return field;
  const there = PLACES.map((part) => document.elementFromPoint(innerWidth / 2, part * innerHeight));
  return there.find((element) => element && !element.childElementCount);
}

/** Does what changes the page, and scrolls as far as that moved what is looked at. */
export function steadily(change) {
  const element = SEEN_TO || scrollY === 0 ? null : looked();
  if (!element) return change();
  const { top } = element.getBoundingClientRect();
  change();
  if (element.isConnected) scrollBy({ top: element.getBoundingClientRect().top - top, behavior: "instant" });
}
