// Renews the board by itself, and reads chosen files into their fields. Without it the pages are whole, and as old as they say.
"use strict";

const EVERY_MS = 15000;
const board = document.querySelector("[data-renew]");

async function renew() {
  const told = document.getElementById("renewed");
  try {
    const answer = await fetch(board.dataset.renew, { redirect: "error", headers: { accept: "text/html" } });
    if (!answer.ok) throw new Error(String(answer.status));
    const text = await answer.text();
    const before = board.textContent;
    // From our own server, which escapes every text; the policy of the page lets no script in it run.
    board.innerHTML = text;
    const rows = (node) => node.replace(/As known here at [^.]*\./, "").replace(/\d+ (min|h|days) ago|less than a minute ago/g, "");
    if (rows(before) !== rows(board.textContent)) told.textContent = "The board changed.";
    delete board.dataset.old;
  } catch {
    // What is shown grows old: said in words, once.
    if (!board.dataset.old) {
      board.dataset.old = "yes";
      const say = document.createElement("p");
      say.className = "notice warn";
      say.textContent = "The office does not answer. What is shown here grows old: ask on site.";
      board.prepend(say);
      told.textContent = say.textContent;
    }
  } finally {
    setTimeout(renew, EVERY_MS);
  }
}

if (board) setTimeout(renew, EVERY_MS);

// A file goes into its field, where it can be looked at before it is sent.
for (const chosen of document.querySelectorAll("input[data-into]")) {
  chosen.hidden = false;
  chosen.addEventListener("change", async () => {
    if (!chosen.files[0]) return;
    document.getElementById(chosen.dataset.into).value = await chosen.files[0].text();
    // The same file, mended, can then be chosen again.
    chosen.value = "";
  });
}
