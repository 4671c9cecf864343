// The workers beside the page, and what they are asked: one rides, one studies, each one thing at a time.
// While something is ridden nothing is studied.

import { compiled } from "../carryline.js";

// How long an answer may take, ms, before a worker is taken for dead: many times what a slow phone needs.
const PATIENCE = { ride: 10000, study: 40000 };

/** A worker of a kind and what it is asked; of what waits only the newest counts. */
function desk(kind) {
  let worker = null;
  let waiting = null;
  let under = null; // what is being worked out
  let number = 0;
  let watch = 0;

  function start() {
    worker = new Worker(new URL("../worker.js", import.meta.url), { type: "module" });
    worker.onmessage = ({ data }) => {
      // What comes from a worker that was replaced meanwhile is nobody's answer.
      if (data.number !== number || !under) return;
      if ("broken" in data) fail(data.broken);
      else finish(data.answer);
    };
    worker.onerror = (event) => fail(event.message);
    // It need not fetch and compile what the page has.
    worker.postMessage({ module: compiled() });
  }

  function stop() {
    clearTimeout(watch);
    worker?.terminate();
    worker = null;
    under = null;
  }

  function finish(answer) {
    clearTimeout(watch);
    const done = under;
    under = null;
    hand(done, answer);
  }

  /** Whatever comes of an answer where it is taken, what waits goes on. */
  function hand(done, answer) {
    try {
      if (!done.dropped) done.take(answer);
    } finally {
      goOn();
    }
  }

  /** The worker broke down: another tries once more; then the asker hears of it, by no answer at all. */
  function fail(why) {
    console.warn(`a worker was replaced: ${why}`);
    const broken = under;
    stop();
    if (broken?.again) return hand(broken, undefined);
    if (broken && !broken.dropped) waiting ??= { ...broken, again: true };
    goOn();
  }

  return {
    busy: () => Boolean(under ?? waiting),
    warm: () => worker ?? start(),
    ask: (order, take) => (waiting = { order, take }),
    drop() {
      waiting = null;
      if (under) under.dropped = true;
    },
    /** Ends what is under way, which is begun again later. */
    rest() {
      if (!under) return;
      if (!under.dropped) waiting ??= under;
      stop();
    },
    next() {
      if (under || !waiting) return;
      [under, waiting] = [waiting, null];
      if (!worker) start();
      number += 1;
      worker.postMessage({ number, ...under.order });
      watch = setTimeout(fail, PATIENCE[kind], "it does not answer");
    },
  };
}

const desks = { ride: desk("ride"), study: desk("study") };

/** Begins what waits: rides before studies. */
export function goOn() {
  desks.ride.next();
  if (!desks.ride.busy()) desks.study.next();
}

/** Gets a worker ready that rides at once: what is being studied is begun again later. */
export function makeRoom() {
  desks.study.rest();
  desks.ride.warm();
}

/**
 * Asks for a "ride" or a "study", in place of what waits of that kind. `take` gets the answer: null where the
 * plan has faults, undefined where no worker could work it out.
 */
export function ask(kind, order, take) {
  desks[kind].ask(order, take);
  if (kind === "ride") makeRoom();
  goOn();
}

/** Nobody wants to know any more: what waits of a kind is not begun, what is under way is not told. */
export function drop(kind) {
  desks[kind].drop();
}
