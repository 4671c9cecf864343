// Starts the page once the words of the reader's language are there.

import { learnt, start } from "./language.js";

start(learnt, () => import("./app.js"));
