// Waits for the words of the reader's language, puts them into the page, and starts it.

import { learnt } from "./language.js";

const root = document.documentElement;

/** Writes what stands in the page itself: each element names its words by their path. */
function write(words) {
  const at = (path) => path.split(".").reduce((inner, key) => inner[key], words);
  for (const element of document.querySelectorAll("[data-words]")) element.textContent = at(element.dataset.words);
  for (const element of document.querySelectorAll("[data-label]")) element.setAttribute("aria-label", at(element.dataset.label));
  for (const [name, word] of Object.entries(words.styled)) root.style.setProperty(`--word-${name}`, JSON.stringify(word));
  root.dataset.written = "true";
}

learnt
  .then((words) => {
    write(words);
    return import("./app.js");
  })
  .catch((error) => {
    console.error(error);
    root.dataset.written = "true";
    document.getElementById("message").hidden = false;
  });
