// The one line that speaks up when something needs to be said.

const box = document.getElementById("message");
const [line, close] = box.children;

/** Says something, with an element under it where one is given; nothing to say hides the line. */
export function say(text, below) {
  line.replaceChildren(text, ...(below ? [below] : []));
  box.hidden = !text;
}

close.addEventListener("click", () => say(""));
