// What the page does: sends what the person did, shows the screen that comes back, and keeps what was typed.
"use strict";

const app = document.getElementById("shell-app");
const form = () => app.querySelector("form");
const picks = (e) => e.type === "radio" || e.type === "checkbox";
const hush = () => document.getElementById("shell-trouble")?.remove();

// Asking the desk ---
const DEAD = "Stillbar is not answering. What you typed is still here. Start it again, and open the address that it prints.";

class Refused extends Error {}

async function post(path, body, type = "application/json") {
  const data = type === "application/json" ? JSON.stringify(body) : body;
  let answer;
  try {
    answer = await fetch(path, { method: "POST", headers: { "Content-Type": type || "application/octet-stream" }, body: data });
    if (answer.status === 204) return null;
    if (answer.ok) return await answer.json();
  } catch {
    throw new Error(DEAD);
  }
  const why = (await answer.text().catch(() => "")).trim() || DEAD;
  // Locked out is not refused: a desk that was started anew takes it once this browser has its key.
  throw answer.status === 403 ? new Error(why) : new Refused(why);
}

// A message of the shell's own: a new element each time, so that a screen reader says it again.
function tell(text) {
  hush();
  const box = Object.assign(document.createElement("p"), { id: "shell-trouble", className: "notice trouble", role: "alert" });
  box.textContent = text;
  form().querySelector(".foot").prepend(box);
  measure();
  box.scrollIntoView({ block: "nearest" });
}

// Drafts: kept by the desk while they are typed ---
// Each with the screen and the hand that it was typed under: it is nobody else's, and belongs nowhere else.
const unsent = new Map();
// Given since the screen that is on its way was asked for: the desk may have drawn it without them.
const late = new Map();
const place = () => ({ route: form().dataset.route, hand: form().dataset.hand });
const keyOf = (field) => JSON.stringify([place(), field]);
let given = 0; // How often something was given or done: a screen that was asked for before that is old.
let timer = 0;
let sending = Promise.resolve();

const partsOf = (field) => [...form().querySelectorAll("[data-field]")].filter((e) => e.dataset.field === field);

// The value of a field as the core wants it. Of a reading in volts and an answer, the number counts.
function valueOf(field) {
  const parts = partsOf(field);
  const typed = parts.find((e) => !picks(e) && e.value.trim() !== "");
  if (typed) return typed.value;
  return parts.filter((e) => picks(e) && e.checked).map((e) => e.value).join("\n");
}

function draft(field, pause) {
  unsent.set(keyOf(field), { ...place(), field, value: valueOf(field) });
  late.set(keyOf(field), valueOf(field));
  given += 1;
  clearTimeout(timer);
  if (pause) timer = setTimeout(keep, pause);
  else keep();
}

// One after the other, so that an older draft never overtakes a newer one. What fails stays unsent and is tried again.
function keep() {
  clearTimeout(timer);
  sending = sending.then(async () => {
    try {
      for (const [key, typed] of [...unsent]) {
        await post("/edit", typed).catch((error) => {
          // A draft that the desk refuses would be refused again; the person is told, and the field still holds it.
          if (error instanceof Refused) unsent.delete(key);
          throw error;
        });
        if (unsent.get(key) === typed) unsent.delete(key);
        hush();
      }
      return true;
    } catch (error) {
      if (unsent.size) timer = setTimeout(keep, 3000);
      tell(error.message);
      return false;
    }
  });
  return sending;
}

// The page goes away: requests that outlive it take what is still unsent.
function leave() {
  for (const typed of unsent.values()) {
    const body = JSON.stringify(typed);
    fetch("/edit", { method: "POST", headers: { "Content-Type": "application/json" }, body, keepalive: true }).catch(() => {});
  }
}

// Acting ---
let busy = false;

// Runs one deed at a time: a second tap while the first is under way does nothing.
async function alone(deed) {
  if (busy) return;
  busy = true;
  given += 1;
  app.setAttribute("aria-busy", "true");
  try {
    // Drafts first: one that arrived after the act would come back as if typed anew.
    if (await keep()) await deed();
  } catch (error) {
    tell(error.message);
  } finally {
    busy = false;
    app.removeAttribute("aria-busy");
  }
}

function ask(action) {
  late.clear();
  noteRead();
  const names = new Set([...form().querySelectorAll("[data-field]")].map((e) => e.dataset.field));
  const fields = [...names].map((field) => ({ field, value: valueOf(field) }));
  return post("/act", { turn: Number(form().dataset.turn), action, fields });
}

const act = (action) => alone(async () => settle(await ask(action)));

function settle(answer) {
  show(answer);
  for (const errand of answer.errands) {
    if (errand.errand === "ring") location.href = `tel:${errand.number.replace(/[^\d+*#]/g, "")}`;
    if (errand.errand === "buzz") navigator.vibrate?.(120);
    if (errand.errand === "share") share(errand);
    if (errand.errand === "share-file") saveAs(`/shared/${errand.name}`, errand.name);
    if (errand.errand === "scan-tag") scan(errand.token, errand.hint);
    if (errand.errand === "take-photo") choose((file) => alone(async () => settle(await deliver(errand.token, file))));
  }
}

const saveAs = (href, download) => Object.assign(document.createElement("a"), { href, download }).click();

// What the browser sends messages with; where it has nothing, a file of text.
function share({ title, text }) {
  const save = () => {
    const file = URL.createObjectURL(new Blob([text], { type: "text/plain" }));
    saveAs(file, `${title}.txt`);
    setTimeout(() => URL.revokeObjectURL(file), 60_000);
  };
  if (navigator.share) navigator.share({ title, text }).catch((error) => error.name === "AbortError" || save());
  else save();
}

// Photos ---
// The screen stays until the photo has arrived, so that a desk that dies meanwhile costs no more than one more tap.
const take = (input) =>
  alone(async () => {
    const file = input.files[0];
    try {
      const answer = await ask(input.dataset.photo);
      const errand = answer.errands.find((e) => e.errand === "take-photo");
      settle(errand ? await deliver(errand.token, file) : answer);
    } finally {
      // The same file chosen once more must count as a change.
      input.value = "";
    }
  });

function deliver(token, file) {
  late.clear();
  const path = `/deliver?token=${encodeURIComponent(token)}`;
  const most = Number(app.dataset.mostPhoto);
  if (!file) return post(path, { why: "No photo was taken." });
  if (file.size > most) return post(path, { why: `The photo is larger than ${most >> 20} MB. Take it with fewer pixels.` });
  return post(path, file, file.type === "application/json" ? "" : file.type);
}

function choose(done) {
  const input = Object.assign(document.createElement("input"), { type: "file", accept: "image/*", capture: "environment" });
  input.addEventListener("change", () => done(input.files[0]));
  input.addEventListener("cancel", () => done(null));
  input.click();
}

// Showing ---
const GIVEN = "[data-mark], input[data-field]:not([type=radio], [type=checkbox], [type=hidden]), textarea";
let changes = Number(app.dataset.changes); // What the screen is the state of.

function show({ html, title, route, changes: count }) {
  changes = count;
  document.getElementById("shell-bar")?.remove();
  const before = seen();
  const { turn } = form().dataset;
  const kept = new Map([...app.querySelectorAll(GIVEN)].map((e) => [e.id, e]));
  const moved = form().dataset.route !== route;
  const held = document.activeElement?.id;
  const at = window.scrollY;
  app.innerHTML = html;
  // What was given while the answer was on its way.
  for (const e of app.querySelectorAll("[data-field]")) {
    const key = keyOf(e.dataset.field);
    if (late.has(key)) again(e, late.get(key));
    else if (unsent.has(key)) again(e, unsent.get(key).value);
  }
  // If nobody did anything meanwhile, what was given stays: a signature or a PIN is no draft, and stands nowhere else.
  for (const e of form().dataset.turn === turn ? app.querySelectorAll(GIVEN) : []) {
    if (kept.has(e.id)) e.replaceWith(kept.get(e.id));
  }
  document.title = `${title} · Stillbar`;
  ready();
  // The browser's own way back leads to the screen before, and not out of the app.
  if (moved && history.state?.route !== route) history.pushState({ route }, "");
  const heading = document.getElementById("shell-title");
  // On the same route, too, a new title, standing, group of readings or thing to do next is a new thing to read from its top.
  if (moved || before !== seen()) arrive();
  else window.scrollTo(0, at);
  ((!moved && held && document.getElementById(held)) || heading).focus({ preventScroll: true });
  // In a foot that sticks it is seen already, and the page would be moved from under the eyes.
  if (!app.querySelector(".foot.stuck")) document.getElementById("shell-notice")?.scrollIntoView({ block: "nearest" });
}

// Of a reading, the same value is either the answer that was picked or what stands in volts.
function again(e, value) {
  const values = value.split("\n");
  const picked = partsOf(e.dataset.field).some((other) => picks(other) && values.includes(other.value));
  if (picks(e)) e.checked = values.includes(e.value);
  else e.value = picked ? "" : value;
}

const seen = () => [...app.querySelectorAll("h1, #shell-word, .pad > legend, .foot .main")].map((e) => e.dataset.action ?? e.textContent).join("|");

// What style and canvas need to know of a new screen.
function ready() {
  app.querySelectorAll("[data-mark]").forEach(paint);
  measure();
  makeRoom();
  pressContrast();
}

// What sticks to the edges takes half the height at most, and nothing that is focused lies under it.
function measure() {
  let left = innerHeight / 2;
  const taken = [".standing", ".foot"].map((edge) => {
    const high = app.querySelector(edge)?.offsetHeight ?? 0;
    const sticks = app.querySelector(edge)?.classList.toggle("stuck", high < left);
    left -= sticks ? high : 0;
    return sticks ? `${high + 8}px` : "0px";
  });
  document.documentElement.style.scrollPaddingBlock = taken.join(" ");
}

// Signatures: strokes `x,y x,y;x,y` on 1000 x 400 ---
const strokesOf = (mark) => mark.querySelector("[data-strokes]");
const full = (strokes) => strokes.split(/[ ;]/).length >= 4000;
let stroke = null;

function paint(mark) {
  const canvas = mark.querySelector("canvas");
  const pen = canvas.getContext("2d");
  pen.clearRect(0, 0, 1000, 400);
  pen.strokeStyle = getComputedStyle(canvas).color;
  Object.assign(pen, { lineWidth: 9, lineCap: "round", lineJoin: "round" });
  const { strokes } = strokesOf(mark).dataset;
  for (const line of strokes ? strokes.split(";") : []) {
    pen.beginPath();
    const points = line.split(" ").map((p) => p.split(",").map(Number));
    pen.moveTo(...points[0]);
    // A line to its own beginning makes a dot visible.
    for (const point of points) pen.lineTo(...point);
    pen.stroke();
  }
}

// What was drawn counts; what was typed stands in for it.
function sign(mark, pause) {
  const hidden = strokesOf(mark);
  const typed = mark.querySelector("[data-typed]");
  const name = typed.value.trim();
  hidden.value = hidden.dataset.strokes || (name && typed.dataset.typed + name);
  draft(hidden.dataset.field, pause);
}

function spot(event) {
  const box = event.target.getBoundingClientRect();
  const within = (share, most) => Math.round(Math.min(Math.max(share, 0), 1) * most);
  return [within((event.clientX - box.left) / box.width, 1000), within((event.clientY - box.top) / box.height, 400)];
}

function pen(event) {
  if (!event.isPrimary || event.target.tagName !== "CANVAS" || !(stroke || event.type === "pointerdown")) return;
  const mark = event.target.closest("[data-mark]");
  const { dataset } = strokesOf(mark);
  if (event.type === "pointerdown") {
    if (full(dataset.strokes)) return;
    event.target.setPointerCapture(event.pointerId);
    stroke = spot(event);
    dataset.strokes = `${dataset.strokes ? `${dataset.strokes};` : ""}${stroke}`;
  } else if (event.type === "pointermove") {
    const next = spot(event);
    if (Math.hypot(next[0] - stroke[0], next[1] - stroke[1]) < 4 || full(dataset.strokes)) return;
    stroke = next;
    dataset.strokes += ` ${next}`;
  } else {
    stroke = null;
    sign(mark);
  }
  paint(mark);
}

// Drawings ---
// A wide drawing in steps, about the middle of what is seen of it.
function zoom(button) {
  const sheet = button.closest("figure").querySelector(".sheet");
  const middle = (at, size, all) => (at + size / 2) / all;
  const x = middle(sheet.scrollLeft, sheet.clientWidth, sheet.scrollWidth);
  const y = middle(sheet.scrollTop, sheet.clientHeight, sheet.scrollHeight);
  const now = Number(sheet.style.getPropertyValue("--zoom")) || 1;
  sheet.style.setProperty("--zoom", Math.min(4, Math.max(1, now * 1.6 ** Number(button.dataset.zoom))));
  sheet.scrollTo(x * sheet.scrollWidth - sheet.clientWidth / 2, y * sheet.scrollHeight - sheet.clientHeight / 2);
}

// Listening ---
app.addEventListener("click", (event) => {
  const folded = event.target.closest("[data-unfold]");
  if (folded) return folded.setAttribute("aria-expanded", String(folded.ariaExpanded !== "true"));
  const larger = event.target.closest("[data-zoom]");
  if (larger) return zoom(larger);
  const mark = event.target.closest("[data-clear]")?.closest("[data-mark]");
  if (mark) {
    strokesOf(mark).dataset.strokes = "";
    paint(mark);
    sign(mark);
  }
  const button = event.target.closest("[data-action]");
  if (button) act(button.dataset.action);
});

// No button sends the form: what a person states is tapped, and never said by Enter in a field.
app.addEventListener("submit", (event) => event.preventDefault());

const CONTROLS = "main :is(input:not([type=hidden]), textarea, button)";
app.addEventListener("keydown", (event) => {
  const { target } = event;
  if (event.key !== "Enter" || !target.matches("input")) return;
  event.preventDefault();
  if (event.repeat) return;
  if (picks(target) || target.type === "file") return target.click();
  // On to what is typed next. To an answer or a button it does not lead, which a second Enter would give.
  const all = [...form().querySelectorAll(target.closest(".volts") ? ".volts input" : CONTROLS)].filter((e) => e.checkVisibility());
  const next = all[all.indexOf(target) + 1];
  if (next?.matches("textarea, input") && !picks(next) && next.type !== "file") next.focus();
  else target.blur();
});

app.addEventListener("input", ({ target }) => {
  if (target.dataset.typed) sign(target.closest("[data-mark]"), 300);
  if (!target.dataset.field) return;
  only(target);
  draft(target.dataset.field, picks(target) ? 0 : 300);
  if (picks(target)) onward(target);
});

// Readings are answered one after the other: the next one comes to the eye, the last one sends them all, and so does one that stops the test.
function onward(input) {
  const pad = input.closest("[data-done]");
  if (!pad) return;
  const rows = [...pad.querySelectorAll("[data-row]")];
  const open = rows.filter((row) => !valueOf(row.querySelector("[data-field]").dataset.field));
  if (!open.length || input.closest(".tile").classList.contains("forbid")) act(pad.dataset.done);
  else open[0].scrollIntoView({ block: "nearest" });
}

// Beside a number no answer looks chosen, and none replaces it by a slip of the thumb.
function only(input) {
  const row = input.closest("[data-row]");
  const volts = row?.querySelector(".volts input");
  if (!volts || (input === volts && volts.value.trim() === "")) return;
  const clash = picks(input) && volts.value.trim() !== "";
  if (clash || input === volts) row.querySelectorAll("[type=radio]").forEach((e) => (e.checked = false));
  const said = row.querySelector("[data-clash]");
  if (said) said.hidden = !clash;
}

app.addEventListener("change", ({ target }) => target.dataset.photo && target.files.length && take(target));
app.addEventListener("focusout", () => unsent.size && keep());
for (const kind of ["pointerdown", "pointermove", "pointerup", "pointercancel"]) app.addEventListener(kind, pen);

addEventListener("pagehide", leave);
addEventListener("pageshow", (event) => event.persisted && location.reload()); // Out of memory comes an old screen.
addEventListener("popstate", ({ state }) => state?.route && act(`go ${state.route}`));
history.replaceState({ route: form().dataset.route }, "");
new ResizeObserver(measure).observe(app);
matchMedia("(prefers-color-scheme: light)").addEventListener("change", ready);

ready();
