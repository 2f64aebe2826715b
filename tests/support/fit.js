// Whether a screen fits: nothing wider than the screen, nothing cut off, broken or overlapping, every target large enough, and on a step the
// first answer seen on arrival. Run on a screen that was just drawn; returns a list of sentences, empty when all is well.
() => {
  const wrong = [];
  const say = (text) => wrong.includes(text) || wrong.push(text);
  const shown = (e) => e.checkVisibility({ visibilityProperty: true }) && !e.closest(".unseen, noscript");
  const name = (e) => `${e.tagName.toLowerCase()}${e.id ? `#${e.id}` : e.className ? `.${String(e.className).split(" ").join(".")}` : ""} "${(e.textContent || e.ariaLabel || "").trim().replace(/\s+/g, " ").slice(0, 50)}"`;
  const styled = new Map();
  const style = (e) => styled.get(e) ?? (styled.set(e, getComputedStyle(e)), styled.get(e));

  // A phone's page does not scroll sideways (WCAG 2.2, 1.4.10 Reflow). In a script from right to left it would run out on the left.
  const page = document.scrollingElement;
  if (page.scrollWidth > innerWidth) say(`the page is ${page.scrollWidth} px wide on a screen of ${innerWidth} px`);

  // Cut off: what hides its overflow holds more than it shows. A drawing in a sheet is moved about, a field scrolls under its cursor,
  // and what is folded opens at a tap. The plate over a step has two lines, for the job's own screen has the whole of it.
  const hides = (e) => /hidden|clip|auto|scroll/.test(`${style(e).overflowX} ${style(e).overflowY}`);
  for (const e of document.body.querySelectorAll("*")) {
    if (!shown(e) || e.closest("svg, .sheet") || e.matches("input, textarea, canvas, img") || !hides(e)) continue;
    if (e.closest("[aria-expanded=false], .folded, .plate")) continue;
    if (e.scrollWidth > e.clientWidth + 1) say(`${name(e)} is cut off: ${e.scrollWidth} px of text in ${e.clientWidth} px`);
    if (e.scrollHeight > e.clientHeight + 1) say(`${name(e)} is cut off: ${e.scrollHeight} px high in ${e.clientHeight} px`);
  }

  // All lines of text with their boxes, less what an ancestor hides of them.
  const layer = (e) => e.closest(".foot.stuck, .standing.stuck, .bar, dialog");
  const clip = (box, from) => {
    let { left, top, right, bottom } = box;
    for (let e = from; e && e !== document.body; e = e.parentElement) {
      if (!hides(e)) continue;
      const edge = e.getBoundingClientRect();
      [left, top, right, bottom] = [Math.max(left, edge.left), Math.max(top, edge.top), Math.min(right, edge.right), Math.min(bottom, edge.bottom)];
    }
    return { left, top, right, bottom };
  };
  // Of what is folded, the word that says how dangerous it is has to be whole.
  for (const e of document.querySelectorAll(".told .word, .caution .word")) {
    const box = e.getBoundingClientRect();
    const seen = clip(box, e.parentElement);
    if (shown(e) && (seen.right - seen.left < box.width - 1 || seen.bottom - seen.top < box.height - 1)) say(`${name(e)} is cut off`);
  }
  const lines = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const node = walker.currentNode;
    const e = node.parentElement;
    if (!node.data.trim() || !shown(e) || e.closest("textarea, script")) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const boxes = [...range.getClientRects()].filter((box) => box.width > 1);
    for (const box of boxes) {
      const { left, top, right, bottom } = clip(box, e);
      // The box of a line is higher than its letters; lines set close are no overlap.
      const less = (bottom - top) * 0.18;
      if (right - left > 1 && bottom - top > 4) lines.push({ e, left, right, top: top + less, bottom: bottom - less });
    }
    if (e.closest("svg")) continue;
    // Our rule, no source: no letters smaller than 16 px, which is what a browser takes for text.
    const size = parseFloat(style(e).fontSize);
    if (size < 15.95) say(`${name(e)} has letters of ${size.toFixed(1)} px`);
    if (new Set(boxes.map((box) => Math.round(box.top / 4))).size < 2) continue;
    // A word on two lines, which no hyphen allows. What a machine made, long and with figures, may break anywhere.
    for (const word of node.data.matchAll(/[^\s\u00AD\u200B\-‐–—/·]{2,}/gu)) {
      range.setStart(node, word.index);
      range.setEnd(node, word.index + word[0].length);
      const tops = [...range.getClientRects()].filter((box) => box.width > 1).map((box) => box.top);
      const machine = word[0].length > 20 && /\d/.test(word[0]);
      if (!machine && Math.max(...tops) - Math.min(...tops) > 4) say(`"${word[0]}" is broken in ${name(e)}`);
    }
  }

  // What a thumb can hit, each as large as it is.
  const targets = new Set();
  for (const e of document.querySelectorAll("button, summary, select, textarea, canvas, [role=button], a[href], input:not([type=hidden])")) {
    const target = e.matches("[type=radio], [type=checkbox], [type=file]") ? (e.labels?.[0] ?? e) : e;
    if (shown(target)) targets.add(target);
  }
  const boxOf = new Map([...targets].map((e) => [e, e.getBoundingClientRect()]));
  // 44 px: WCAG 2.2, 2.5.5 Target Size (Enhanced). 57 px, 15 mm at 96 pixels an inch, and 3 mm apart for the answers of a reading, which are
  // given with the eyes on the probes: our rule, no source.
  const least = (e) => (e.closest("[data-row]") && e.matches(".tile") ? 57 : 44);
  for (const [e, box] of boxOf) {
    const size = Math.min(box.width, box.height);
    if (size < least(e) - 0.5) say(`${name(e)} is ${box.width.toFixed(0)} x ${box.height.toFixed(0)} px; it needs ${least(e)}`);
  }
  for (const row of document.querySelectorAll("[data-row]")) {
    const tiles = [...row.querySelectorAll(".tile")].map((e) => boxOf.get(e));
    for (const [i, a] of tiles.entries()) {
      for (const b of tiles.slice(i + 1)) {
        const across = Math.max(a.left, b.left) - Math.min(a.right, b.right);
        const down = Math.max(a.top, b.top) - Math.min(a.bottom, b.bottom);
        const apart = Math.max(across, down);
        if (apart < 11) say(`answers of ${name(row)} are ${apart.toFixed(1)} px apart; a glove needs 11`);
      }
    }
  }

  // Overlaps, within what scrolls together.
  const meet = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
  const folded = (a, b) => a.closest(".folded") && a.closest(".folded") === b.closest(".folded");
  const apart = (a, b) => !a.contains(b) && !b.contains(a) && layer(a) === layer(b) && !folded(a, b);
  const all = [...boxOf];
  for (const [i, line] of lines.entries()) {
    for (const other of lines.slice(i + 1)) {
      if (line.e !== other.e && meet(line, other) && layer(line.e) === layer(other.e)) say(`${name(line.e)} and ${name(other.e)} overlap`);
    }
    for (const [e, box] of all) {
      if (meet(line, box) && apart(line.e, e)) say(`${name(line.e)} lies over ${name(e)}`);
    }
    const around = line.e.closest("button, .tile, .shutter");
    if (around && !line.e.closest("svg")) {
      const box = around.getBoundingClientRect();
      if (line.left < box.left - 1 || line.right > box.right + 1 || line.top < box.top - 1 || line.bottom > box.bottom + 1) say(`${name(line.e)} runs out of ${name(around)}`);
    }
    if (!line.e.closest(".sheet") && (line.left < -1 || line.right > innerWidth + 1)) say(`${name(line.e)} runs out of the screen`);
  }
  for (const [i, [a, one]] of all.entries()) {
    for (const [b, other] of all.slice(i + 1)) if (meet(one, other) && apart(a, b)) say(`${name(a)} lies over ${name(b)}`);
  }

  // On arrival a step shows the first thing to answer it with. Our rule, no source: who has to search for it first does not read what comes before.
  // After a stop, what stands there is read first, and so is an answer of more than a line to what was just done.
  const notice = document.querySelector("#shell-notice p");
  const first = document.querySelector(".standing.forbid") || (notice && notice.offsetHeight > 2 * parseFloat(style(notice).fontSize));
  if (!first && /^\/job\/[^/]+\/step\//.test(document.querySelector("form").dataset.route)) {
    const answers = "input:not([type=hidden], [type=file], [type=radio], [type=checkbox]), textarea, .tile, .shutter, canvas, button[data-action]:not([data-action^='go '])";
    // Where readings are typed, answers stand in for them: the field is what is answered.
    const instead = (e) => e.matches("[data-row] .tile") && !e.closest("[data-done]") && e.closest("[data-row]").querySelector(".volts");
    const answer = [...document.querySelectorAll("main, .foot")].flatMap((part) => [...part.querySelectorAll(answers)]).find((e) => shown(e) && !instead(e));
    const edge = (e) => (e?.classList.contains("stuck") ? e.getBoundingClientRect() : null);
    const top = edge(document.querySelector(".standing"))?.bottom ?? 0;
    const bottom = edge(document.querySelector(".foot"))?.top ?? innerHeight;
    const title = document.querySelector("h1").getBoundingClientRect();
    if (title.top < top - 1) say(`the title is not seen on arrival: it begins at ${title.top.toFixed(0)} px, under ${top.toFixed(0)}`);
    const box = answer?.getBoundingClientRect();
    // Of a field for many lines, as much as a thumb needs.
    const end = answer?.matches("textarea, canvas") ? Math.min(box.bottom, box.top + 57) : box?.bottom;
    const seen = !answer || answer.closest(".foot.stuck") || (box.top >= top - 1 && end <= bottom + 1);
    if (!seen) say(`the first answer, ${name(answer)}, is from ${box.top.toFixed(0)} to ${end.toFixed(0)} px; on arrival ${top.toFixed(0)} to ${bottom.toFixed(0)} is seen`);
  }
  return wrong;
};
