// Starts what is not needed for the first ride, and is fetched after it.

import { startCards } from "./parts/cards.js";
import { startCosts } from "./parts/costs.js";
import { startNewer } from "./parts/newer.js";
import { startSeen } from "./parts/seen.js";
import { isOwnAddress, startShare } from "./parts/share.js";
import { startSound } from "./parts/sound.js";
import { startStudy } from "./parts/study.js";
import { startTestDay } from "./parts/test_day.js";
import { startWhatIf } from "./parts/what_if.js";

/** `open` opens the line in the address. */
export function startLate(open) {
  startShare();
  startSound();
  startCards();
  startWhatIf();
  startCosts();
  startTestDay();
  startSeen();
  startStudy();
  window.addEventListener("hashchange", () => {
    if (!isOwnAddress()) open();
  });
  // The page works as well where nothing can be kept, as in some private windows.
  startNewer().catch(console.warn);
}
