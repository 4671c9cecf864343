// Every word of the language: once the page is built they are one file.

import * as page from "./page.js";
import * as plan from "./plan.js";
import * as ride from "./ride.js";
import * as kid from "./kid.js";
import * as day from "./day.js";
import * as faults from "./faults.js";

export const files = { page, plan, ride, kid, day, faults };
