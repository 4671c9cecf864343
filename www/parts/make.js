// Making elements in one line, and writing into them.

/** An element with properties and content; `data` goes into its data set. */
export function make(tag, { data = {}, ...properties } = {}, ...content) {
  const made = Object.assign(document.createElement(tag), properties);
  Object.assign(made.dataset, data);
  made.append(...content);
  return made;
}

// What is as it should be is left alone: to write the same again would lay the page out anew.

/** Writes a text where another stands. */
export function say(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/** Hides an element, or shows it. */
export function hide(element, hidden) {
  if (element.hidden !== hidden) element.hidden = hidden;
}
