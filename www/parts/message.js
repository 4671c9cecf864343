// The one line at the top that speaks up when something needs to be said.

const line = document.getElementById("message");

/** Says something; nothing to say hides the line. */
export function say(text) {
  line.textContent = text;
  line.hidden = !text;
}
