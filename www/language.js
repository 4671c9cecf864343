// The language of the page: the first of the reader's that there is a folder of words for.

// The folders in `words`; the first is for whoever reads none of them.
const LANGUAGES = ["en", "de"];

const known = (tag) => LANGUAGES.find((language) => language === tag.toLowerCase().split("-")[0]);

export const language = navigator.languages.map(known).find(Boolean) ?? LANGUAGES[0];
document.documentElement.lang = language;

/** Every word of the language, once `learnt` has come true. */
export const words = {};

/** Fetches that language and no other; nothing else of the page runs before it is there. */
export const learnt = import(`./words/${language}/all.js`).then(({ files }) => Object.assign(words, ...Object.values(files)));
