// Plays a line of a journey from inside the page, by the labels on it and the page's own events. Without a thumb, so that whole stories
// take seconds: what only a thumb can show, such as whether a button can be hit, is not tried here.
async ({ verb, about, value, photo }) => {
  const words = (e) => e.textContent.replace(/\s+/g, " ").trim();
  const one = (what, found, part = []) => {
    const hits = found.length ? found : part;
    if (hits.length !== 1) throw new Error(`${hits.length} of ${what} "${about}" on "${words(document.querySelector("h1"))}"`);
    return hits[0];
  };
  const named = (what, all, label) => one(what, all.filter((e) => label(e) === about), all.filter((e) => label(e).includes(about)));
  const turn = () => form().dataset.turn;
  const idle = async () => {
    while (busy || unsent.size) await new Promise((done) => setTimeout(done, 2));
    await sending;
  };
  const type = (box, text) => {
    box.value = text;
    box.dispatchEvent(new InputEvent("input", { bubbles: true }));
    keep();
  };
  const answer = (group) => one("answer", [...group.querySelectorAll(".tile")].filter((e) => words(e.querySelector(".name")) === value)).querySelector("input");
  const before = turn();
  if (verb === "tap") {
    // The last reading of a set has sent them all, and so has one that stops the test.
    const sent = document.swiftSent;
    document.swiftSent = "";
    if (sent === about) return;
    const all = [...app.querySelectorAll("button[data-action]")].filter((e) => !e.closest("[inert]"));
    named("button", all, (e) => words(e.querySelector(".title") ?? e)).click();
  } else if (verb === "fill") {
    type(one("field", [...app.querySelectorAll("label")].filter((e) => words(e) === about && e.control?.matches("input, textarea"))).control, value);
  } else if (verb === "choose" || verb === "untap") {
    answer(one("question", [...app.querySelectorAll(".choice")].filter((e) => words(e.querySelector("legend")) === about))).click();
  } else if (verb === "read") {
    const row = one("pair", [...app.querySelectorAll("[data-row]")].filter((e) => words(e.querySelector("legend")) === about));
    const main = row.closest("[data-done]") && words(app.querySelector(".foot .main"));
    if (/^\d/.test(value)) type(row.querySelector(".volts input"), value);
    else answer(row).click();
    await idle();
    if (main) document.swiftSent = turn() === before ? "" : main;
  } else if (verb === "sign") {
    type(one("signature", [...app.querySelectorAll("[data-mark]")].filter((e) => words(e.querySelector(".label")) === about)).querySelector("[data-typed]"), value);
  } else if (verb === "photo") {
    const input = one("photo", [...app.querySelectorAll("input[data-photo]")].filter((e) => words(e.labels[0]) === about));
    const bytes = Uint8Array.from(atob(photo), (c) => c.charCodeAt(0));
    const files = new DataTransfer();
    files.items.add(new File([bytes], "photo.png", { type: "image/png" }));
    input.files = files.files;
    input.dispatchEvent(new Event("change", { bubbles: true }));
  }
  await idle();
  const trouble = document.getElementById("shell-trouble");
  if (trouble) throw new Error(words(trouble));
  if (["tap", "photo"].includes(verb) && turn() === before) throw new Error("nothing was answered");
};
