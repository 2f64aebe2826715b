// Whether the desk is there, and whether what is shown is how things stand: asked every second, and said where it is not.
"use strict";

const PULSE_MS = 1000;
// With the pulse well under the three seconds after which nobody may look at an old screen unwarned.
const PATIENCE_MS = 1500;

let asking = false;
let pressed = false;
let lost = "";
let found = false;

async function pulse() {
  if (asking || document.hidden) return;
  asking = true;
  try {
    await look();
  } finally {
    asking = false;
  }
}

async function look() {
  const known = changes;
  let count;
  try {
    const answer = await fetch("/stirred", { signal: AbortSignal.timeout(PATIENCE_MS) });
    const said = await answer.text();
    if (!answer.ok) return lose(said);
    // The desk is there, and its core is busy.
    if (answer.status === 204) return;
    count = Number(said);
  } catch {
    return lose(DEAD);
  }
  if (lost) return recover(count);
  // The camera's frames bring the new screen by themselves.
  if (count === known || known !== changes || busy || document.querySelector("dialog[open]")) return;
  // Never under a finger: who types or signs is told, and shown it afterwards.
  const typing = document.activeElement?.matches("input:not([type=radio], [type=checkbox]), textarea");
  if (typing || unsent.size || pressed) return meanwhile();
  await renew(() => !busy && !pressed);
}

function current() {
  // What was given before is in it; what is given from now on makes it old.
  late.clear();
  return fetch("/screen").then((answer) => (answer.ok ? answer.json() : null), () => null);
}

// The form stays as it is; what stands proved is told at once. If only time has passed, the form is no older for that.
async function meanwhile() {
  const before = given;
  const answer = await current();
  if (!answer || busy || given !== before) return;
  const { content } = Object.assign(document.createElement("template"), { innerHTML: answer.html });
  const word = (root) => root.querySelector("#shell-word")?.textContent;
  if (content.querySelector("form").dataset.turn !== form().dataset.turn || word(content) !== word(app)) return outdated();
  app.querySelectorAll("[data-standing]").forEach((e) => e.remove());
  app.querySelector("main").before(...content.querySelectorAll("[data-standing]"));
  measure();
}

async function renew(may) {
  const before = given;
  const answer = await current();
  // Who answered or acted meanwhile would lose it to a screen from before that.
  if (!answer || !may() || given !== before) return;
  // Why something was not saved is still to be read; that nobody answered is over.
  const trouble = document.getElementById("shell-trouble")?.textContent;
  show(answer);
  if (trouble && trouble !== DEAD) tell(trouble);
}

// Over everything and first in the page: a new element each time, so that a screen reader says it.
function bar(kind, ...parts) {
  document.getElementById("shell-bar")?.remove();
  const box = Object.assign(document.createElement("div"), { id: "shell-bar", className: `bar ${kind}`, role: "alert" });
  box.append(...parts);
  (document.querySelector("dialog[open]") ?? document.body).prepend(box);
}

const line = (tag, textContent) => Object.assign(document.createElement(tag), { textContent });

function outdated() {
  if (document.getElementById("shell-bar")) return;
  const button = Object.assign(line("button", "Show the new screen"), { type: "button", className: "button" });
  button.addEventListener("click", async () => {
    await keep();
    await renew(() => !busy);
  });
  bar("old", line("p", "This screen is old. Something changed in another window or on another phone."), button);
}

// Whatever stands on this page may have ended: nothing on it may be tapped.
function lose(why) {
  found = false;
  if (lost === why) return;
  lost = why;
  app.inert = true;
  bar("lost", line("strong", "Cut off from Stillbar: treat as live."), line("p", why));
}

async function recover(count) {
  if (count === changes && !unsent.size) {
    lost = "";
    app.inert = false;
    hush();
    return document.getElementById("shell-bar")?.remove();
  }
  // Not at the first answer: this page itself may be on its way to the new address just now.
  if (!found) return (found = true);
  // What was typed goes first, to the screen that it was typed on.
  await keep();
  location.reload();
}

const hold = (event) => (pressed = event.type === "pointerdown");
for (const kind of ["pointerdown", "pointerup", "pointercancel"]) addEventListener(kind, hold, true);
document.addEventListener("visibilitychange", pulse);
setInterval(pulse, PULSE_MS);
