// The language of the page: the first of the reader's that there is a folder of words for.

// The folders in `words`; the first is for whoever reads none of them.
const LANGUAGES = ["en", "de"];

const known = (tag) => LANGUAGES.find((language) => language === tag.toLowerCase().split("-")[0]);

const root = document.documentElement;

export const language = navigator.languages.map(known).find(Boolean) ?? LANGUAGES[0];
root.lang = language;

/** Every word of the language, once `learnt` has come true. */
export const words = {};

/** Fetches that language and no other; nothing else of the page runs before it is there. */
export const learnt = import(`./words/${language}/all.js`).then(({ files }) => Object.assign(words, ...Object.values(files)));

/** Writes what stands in the page itself: each element names its words by their path. */
function write() {
  const at = (path) => path.split(".").reduce((inner, key) => inner[key], words);
  for (const element of document.querySelectorAll("[data-words]")) element.textContent = at(element.dataset.words);
  for (const element of document.querySelectorAll("[data-label]")) element.setAttribute("aria-label", at(element.dataset.label));
  for (const [name, word] of Object.entries(words.styled)) root.style.setProperty(`--word-${name}`, JSON.stringify(word));
  root.dataset.written = "true";
}

/** Waits for the words, puts them into the page, and starts what `load` brings. */
export async function start(coming, load) {
  try {
    await coming;
    write();
    await load();
  } catch (error) {
    console.error(error);
    root.dataset.written = "true";
    document.getElementById("message").hidden = false;
  }
}
