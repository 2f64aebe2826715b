// Makes room for the first answer: where it would not be seen on arrival, what stands before it folds to a line that a tap opens. Only what may be
// missed for a moment folds: facts that were noted, steps, and a caution that was read on this route before. Never one that forbids. All of it
// stays in the page, for those who hear it.
"use strict";

const ANSWERS =
  "input:not([type=hidden], [type=file], [type=radio], [type=checkbox]), textarea, .tile, .shutter, canvas, button[data-action]:not([data-action^='go '])";
// Both only as long as the page lives.
const readCautions = new Set();
const openedParts = new Set();

const partKey = (part) => `${form().dataset.route} ${part.className} ${part.textContent}`;

// What was in view when a person went on counts as read.
function noteRead() {
  app.querySelectorAll(".caution").forEach((caution) => caution.closest(".folded") || readCautions.add(partKey(caution)));
}

// Where readings are typed, answers stand in for them: the field is what is answered.
function firstAnswer() {
  const all = [...app.querySelectorAll("main, .foot")].flatMap((part) => [...part.querySelectorAll(ANSWERS)]);
  const instead = (e) => e.matches("[data-row] .tile") && !e.closest("[data-done]") && e.closest("[data-row]").querySelector(".volts");
  return all.find((e) => e.checkVisibility() && !instead(e));
}

// How many pixels of it lie below what is seen on arrival. Of a field for many lines, one that can be hit is enough.
function below(answer) {
  const edge = (name) => app.querySelector(`${name}.stuck`);
  if (edge(".foot")?.contains(answer)) return 0;
  const seen = edge(".foot")?.getBoundingClientRect().top ?? innerHeight;
  const { top, height } = answer.getBoundingClientRect();
  return top + scrollY + (answer.matches("textarea, canvas") ? Math.min(height, 57) : height) - seen;
}

function mayFold(part) {
  if (openedParts.has(partKey(part)) || part.querySelector("button")) return false;
  if (part.matches(".caution")) return !part.matches(".forbid") && readCautions.has(partKey(part));
  return true;
}

function fold(part, answer) {
  const at = answer.getBoundingClientRect().top;
  const folded = Object.assign(document.createElement("div"), { className: "folded" });
  const button = Object.assign(document.createElement("button"), { type: "button", className: "unfold" });
  // A list holds nothing but its rows, so the button stands beside it.
  part.replaceWith(folded);
  folded.append(part, button);
  // Short already, or beside the answer and not above it.
  if (at - answer.getBoundingClientRect().top < 12) return folded.replaceWith(part);
  const more = part.matches(".caution") ? 0 : part.children.length - 1;
  button.dataset.open = "";
  button.setAttribute("aria-expanded", "false");
  if (more) button.textContent = `+${more}`;
  const named = part.id ? part : part.querySelector("[id]");
  if (named) button.setAttribute("aria-labelledby", named.id);
}

function makeRoom() {
  const answer = firstAnswer();
  // After a stop, what stands there is the matter itself.
  if (!answer || app.querySelector(".standing.forbid")) return;
  const before = (part) => part.compareDocumentPosition(answer) & Node.DOCUMENT_POSITION_FOLLOWING;
  // What was noted goes first: a caution is worth more.
  for (const kind of [".facts", ".steps", ".caution"]) {
    for (const part of app.querySelectorAll(`main ${kind}`)) {
      if (below(answer) <= 0) return;
      if (before(part) && mayFold(part)) fold(part, answer);
    }
  }
}

// A screen is read from its top. If the first answer is only just below, the way up may leave: it comes back with one swipe, and the title stays.
function arrive() {
  const answer = firstAnswer();
  const lacks = answer ? Math.ceil(below(answer)) : 0;
  scrollTo(0, lacks > 0 && lacks <= app.querySelector(".top").offsetHeight ? lacks : 0);
}

addEventListener("click", (event) => {
  const button = event.target.closest?.("[data-open]");
  if (!button) return;
  const folded = button.parentElement;
  const part = folded.firstElementChild;
  folded.replaceWith(part);
  openedParts.add(partKey(part));
  // Where the eyes are, the focus is.
  part.tabIndex = -1;
  part.focus({ preventScroll: true });
});
