// More contrast for a screen in the sun: a choice of this browser, kept by it and nowhere else.
"use strict";

const CONTRAST = "stillbar-contrast";
const root = document.documentElement;

// A browser that keeps nothing still shows what was chosen until the page goes.
function kept(choice) {
  try {
    if (choice === undefined) return localStorage.getItem(CONTRAST) === "more";
    if (choice) localStorage.setItem(CONTRAST, "more");
    else localStorage.removeItem(CONTRAST);
  } catch {
    return false;
  }
}

function pressContrast() {
  for (const button of document.querySelectorAll("[data-contrast-button]")) button.setAttribute("aria-pressed", String("contrast" in root.dataset));
}

if (kept()) root.dataset.contrast = "more";

addEventListener("click", (event) => {
  if (!event.target.closest?.("[data-contrast-button]")) return;
  if ("contrast" in root.dataset) delete root.dataset.contrast;
  else root.dataset.contrast = "more";
  kept("contrast" in root.dataset);
  ready();
});
