// Every word of the sheets: once the page is built they are one file.

import * as page from "./page.js";
import * as ground from "./ground.js";
import * as wood from "./wood.js";
import * as day from "./day.js";

export const files = { page, ground, wood, day };
