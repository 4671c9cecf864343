// The words that the sheets alone say, in the language of their reader.

import { words } from "../language.js";

export const { boxes, common, day, dirt, lips, materials, page, pieces, ramp, stakes, supplies, titles, upkeep } = words.build;
