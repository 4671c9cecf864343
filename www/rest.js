// The parts of the page that are no part of the first ride; they are fetched once it is on the screen.

import { startWays } from "./parts/ways.js";
import { startSend } from "./parts/send.js";
import { startPlan } from "./parts/plan.js";
import { startFaults } from "./parts/faults.js";
import { startGrips } from "./parts/grips.js";
import { startSound } from "./parts/sound.js";
import { startCards } from "./parts/cards.js";
import { startWhatIf } from "./parts/what_if.js";
import { startCosts } from "./parts/costs.js";
import { startTestDay } from "./parts/test_day.js";
import { startSeen } from "./parts/seen.js";
import { startStudy } from "./parts/study.js";
import { startNewer } from "./parts/newer.js";

const REST = [startWays, startSend, startPlan, startFaults, startGrips, startSound, startCards, startWhatIf, startCosts, startTestDay, startSeen, startStudy];

export function startRest() {
  for (const part of REST) part();
  // The page works as well where nothing can be kept, as in some private windows.
  startNewer().catch(console.warn);
}
