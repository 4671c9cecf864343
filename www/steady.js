// What is being looked at stays where it is while rows above it come and go. Browsers do not see to that: some not at
// all, some not under typing (so the style has them keep out of it).

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

// So soon after a change nobody scrolls who has just typed, ms.
const AT_ONCE = 100;

/** Does what changes the page, and scrolls as far as that moved what is looked at. */
export function steadily(change) {
  const element = scrollY === 0 ? null : looked();
  if (!element) return change();
  const { top } = element.getBoundingClientRect();
  const hold = () => {
    const off = element.isConnected ? element.getBoundingClientRect().top - top : 0;
    if (off) scrollBy({ top: off, behavior: "instant" });
  };
  change();
  hold();
  if (element !== document.activeElement) return;
  // Under typing the browser scrolls once more, to where the field was before: that is taken back.
  addEventListener("scroll", hold, { once: true });
  setTimeout(() => removeEventListener("scroll", hold), AT_ONCE);
}
