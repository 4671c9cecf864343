// Every word that the page says, in the language of its reader. The words stand in `words`, a folder to a
// language: another language is another such folder, and a line in `language.js`.

import { words } from "./language.js";

export const {
  act, allClean, apart, back, broken, called, cards, causes, cautions, crashes, damaged, degrees, dig, digests, dug, ending, energyLine,
  faults, feel, fields, given, gives, grips, grounds, groups, hard, how, howShort, impact, kinds, landingLost, leastSure, likely,
  lines, links, loadAgain, look, missing, model, newLine, newer, noJumps, noProof, noWindow, numbered, otherAt, otherModel,
  oneByOne, over, pace, picture, pitched, play, point, preset, range, readings, reasons, rollers, rolling, rows, seconds, seen, share,
  soils, sound, sources, spare, state, styles, suggest, sureOfAll, sureOfIt, surfaces, table, takes, terms, testDay, told, tolls, tooFast, tooSlow,
  tries, tryIt, typed, unreadable, view, whatIf, ways, wheels, why, whyParts, window,
} = words;
