// Starts what is not needed for the first ride, and is fetched after it.

import { startCosts } from "./parts/costs.js";
import { startNewer } from "./parts/newer.js";
import { startSeen } from "./parts/seen.js";
import { isOwnAddress, startShare } from "./parts/share.js";
import { startStudy } from "./parts/study.js";
import { startTestDay } from "./parts/test_day.js";

/** `open` opens the line in the address. */
export function startLate(open) {
  startShare();
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
