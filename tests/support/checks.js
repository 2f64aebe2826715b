// What must hold on every screen. Returns a list of sentences, empty when all is well.
() => {
  const wrong = [];
  const shown = (e) => e.checkVisibility({ visibilityProperty: true }) && e.getBoundingClientRect().width > 0;
  const name = (e) => `${e.tagName.toLowerCase()} "${(e.innerText || e.ariaLabel || e.name || e.id || "").trim().slice(0, 40)}"`;

  const titles = [...document.querySelectorAll("h1")].filter(shown);
  if (titles.length !== 1) wrong.push(`a screen has one h1; this one has ${titles.length}`);

  // screen.width and not innerWidth alone: a mobile viewport grows with what overflows it.
  const width = Math.min(innerWidth, screen.width);
  const wide = document.scrollingElement.scrollWidth;
  if (wide > width) {
    const who = [...document.body.querySelectorAll("*")].filter((e) => shown(e) && e.getBoundingClientRect().right > width + 0.5);
    wrong.push(`${wide} px wide on a screen of ${width} px: ${who.slice(-3).map(name).join(", ")}`);
  }

  // 44 px: WCAG 2.2 success criterion 2.5.5, target size (enhanced). Gloves would like more.
  const targets = new Set(document.querySelectorAll("button, summary, select, textarea, [role=button], a[href]"));
  for (const input of document.querySelectorAll("input:not([type=hidden])")) {
    const tile = ["radio", "checkbox", "file"].includes(input.type) ? input.labels?.[0] : input;
    targets.add(tile ?? input);
  }
  for (const target of targets) {
    // A link inside a sentence is exempt in that criterion too.
    const inline = target.tagName === "A" && getComputedStyle(target).display === "inline";
    if (!shown(target) || inline) continue;
    const height = target.getBoundingClientRect().height;
    if (height < 43.5) wrong.push(`${name(target)} is ${height.toFixed(1)} px high; a gloved thumb needs 44`);
  }

  const ids = [...document.querySelectorAll("[id]")].map((e) => e.id);
  const twice = [...new Set(ids.filter((id, i) => ids.indexOf(id) !== i))];
  if (twice.length) wrong.push(`these ids are there twice: ${twice.join(", ")}`);

  // The app never says that a state is safe. The trade's "key safe" is a box and "safe isolation" is the name of a procedure.
  const text = document.body.innerText.replace(/key safes?|safe isolation/gi, "");
  const safe = text.match(/.{0,40}\bsafe\b.{0,20}/i);
  if (safe) wrong.push(`the screen says "${safe[0]}"`);

  return wrong;
};
