// Starts the page of sheets once the words of the reader's language are there, those of the sheets too.

import { language, learnt, start, words } from "../language.js";

const own = import(`./words/${language}/all.js`).then(({ files }) => (words.build = Object.assign({}, ...Object.values(files))));

start(Promise.all([learnt, own]), () => import("./app.js"));
