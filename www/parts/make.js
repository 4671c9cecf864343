// Making elements in one line.

/** An element with properties and content; `data` goes into its data set. */
export function make(tag, { data = {}, ...properties } = {}, ...content) {
  const made = Object.assign(document.createElement(tag), properties);
  Object.assign(made.dataset, data);
  made.append(...content);
  return made;
}
