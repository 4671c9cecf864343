// Waits for the words of the reader's language, those of the sheets too, puts them into the page, and starts it.

import { language, learnt } from "../language.js";

const root = document.documentElement;

/** Writes what stands in the page itself: each element names its words by their path. */
function write(words) {
  const at = (path) => path.split(".").reduce((inner, key) => inner[key], words);
  for (const element of document.querySelectorAll("[data-words]")) element.textContent = at(element.dataset.words);
  root.dataset.written = "true";
}

Promise.all([learnt, import(`./words/${language}/all.js`)])
  .then(([words, { files }]) => {
    words.build = Object.assign({}, ...Object.values(files));
    write(words);
    return import("./app.js");
  })
  .catch((error) => {
    console.error(error);
    root.dataset.written = "true";
    document.getElementById("message").hidden = false;
  });
