// Letters that stand out less than so many to one from what they are on, by WCAG 2.2 (relative luminance, contrast ratio); and edges of what can be
// tapped by its success criterion 1.4.11, three to one. Returns a list of sentences.
(least) => {
  const wrong = new Set();
  const numbers = (colour) => colour.match(/[\d.]+/g).map(Number);
  const light = ([r, g, b]) => {
    const part = (c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4);
    return 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
  };
  const ratio = (one, other) => {
    const [a, b] = [light(one), light(other)].sort((x, y) => y - x);
    return (a + 0.05) / (b + 0.05);
  };
  const under = (e) => {
    for (; e; e = e.parentElement) {
      const colour = numbers(getComputedStyle(e).backgroundColor);
      if ((colour[3] ?? 1) === 1) return colour;
    }
    return [255, 255, 255];
  };
  const name = (e) => `${e.tagName.toLowerCase()}.${e.getAttribute("class") ?? ""} "${e.textContent.trim().slice(0, 40)}"`;
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const e = walker.currentNode.parentElement;
    if (!walker.currentNode.data.trim() || !e.checkVisibility() || e.closest("svg, noscript, script, .unseen")) continue;
    const found = ratio(numbers(getComputedStyle(e).color), under(e));
    if (found < least) wrong.add(`${name(e)}: ${found.toFixed(2)}`);
  }
  for (const e of document.querySelectorAll(".button:not(.main), .tile, input[type=text], textarea, .shutter, button.step")) {
    if (!e.checkVisibility() || !parseFloat(getComputedStyle(e).borderTopWidth)) continue;
    const found = ratio(numbers(getComputedStyle(e).borderTopColor), under(e.parentElement));
    if (found < 3) wrong.add(`the edge of ${name(e)}: ${found.toFixed(2)}`);
  }
  return [...wrong];
};
