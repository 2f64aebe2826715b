"""A phone in a hand: Chromium at 390 x 844, touched by the names that a screen reader would read.

Every helper waits until the app has answered, and every answer is checked for what must hold on all screens
(`checks.js`). A failure shows the whole screen as text.
"""

import re
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, Error, Locator, Page

WIDTH, HEIGHT = 390, 844

# Bound for one answer of the app. A frame is the aim; a loaded machine of two cores gets more.
PATIENCE_MS = 15_000

CHECKS = Path(__file__).with_name("checks.js").read_text()
OUT = Path(__file__).resolve().parents[1] / "out"

# How Chromium says that nobody answered, which is what a killed desk looks like; one that was started anew has another key.
_UNREACHABLE = re.compile(r"net::ERR_|Failed to fetch|status of 403")

# Before a tap: what is on screen, and a mark on each notice, so that the same words said again count as an answer.
_NOTICES = """[...document.querySelectorAll('[role=status], [role=alert]')].filter((e) => e.checkVisibility() && e.innerText.trim())"""
_BEFORE = f"""() => {{
  for (const notice of {_NOTICES}) notice.seenByTest = notice.innerText;
  return document.querySelector('[data-turn]')?.dataset.turn ?? '';
}}"""
_ANSWERED = f"""(before) => {{
  const turn = document.querySelector('[data-turn]')?.dataset.turn ?? before;
  return turn !== before || {_NOTICES}.some((notice) => notice.seenByTest !== notice.innerText);
}}"""

Name = str | re.Pattern[str]


class Phone:
    """One page of the app."""

    def __init__(self, browser: Browser, name: str, scale: int = 2, locale: str = "en-GB"):
        """`name` names the picture that a failure leaves in tests/out; `scale` is pixels a point, `locale` what the browser asks for."""
        self._name = re.sub(r"[^\w.-]+", "-", name)
        self._context = browser.new_context(
            viewport={"width": WIDTH, "height": HEIGHT},
            screen={"width": WIDTH, "height": HEIGHT},
            device_scale_factor=scale,
            has_touch=True,
            color_scheme="dark",
            locale=locale,
            timezone_id="Europe/London",
        )
        self._context.set_default_timeout(PATIENCE_MS)
        self.page: Page = self._context.new_page()
        self._errors: list[str] = []
        self._unreachable_expected = False
        self._sent: str | None = None
        self._refusal_expected = ""
        self._open_requests: set = set()
        self.page.on("console", lambda m: self._error(f"{m.text} {m.location.get('url', '')}") if m.type == "error" else None)
        self.page.on("pageerror", lambda e: self._error(str(e)))
        # Lambdas, because Playwright puts a mark on a handler, which a built-in method does not take.
        self.page.on("request", lambda r: self._open_requests.add(r))
        self.page.on("requestfinished", lambda r: self._open_requests.discard(r))
        self.page.on("requestfailed", lambda r: self._open_requests.discard(r))

    # Doing ---------------------------------------------------------------------------------------------------------

    def open(self, url: str) -> None:
        """Goes to an address, as typed."""
        self.page.goto(url)
        self.page.wait_for_selector("[data-turn]", state="attached")
        self._unreachable_expected = False
        self.check()

    def tap(self, name: Name) -> None:
        """Taps the one button or link of this name; a text that is only part of one name is enough."""
        if self.went_by_itself(name):
            return
        target = self.target(name)
        with self._answer(f"a tap on {name!r}"):
            target.tap()

    def went_by_itself(self, name: Name) -> bool:
        """Whether the last answer has done already what this button does: the last reading of a set sends them all."""
        sent, self._sent = self._sent, None
        return sent is not None and sent == name

    def fill(self, label: Name, value: str) -> None:
        """Types into the field of this label and leaves it; the app has then kept what was typed."""
        box = self.field(label)
        box.fill(value)
        box.blur()
        self._settle()
        self.check()

    def choose(self, group: Name, option: Name) -> None:
        """Taps a tile of a group of answers."""
        tile = self.answer(group, option)
        main = tile.evaluate("""e => e.closest("[data-done]") && document.querySelector(".foot .main")?.innerText""")
        # An answer that stops the test has sent the set; what else is read of it is read on the screen that came.
        if main:
            self._sent = None
        turn = self._turn()
        while True:
            # A thumb meets the tile; the radio button inside it may be one pixel wide.
            element = tile.evaluate_handle("e => e.labels?.[0] ?? e").as_element()
            try:
                element.tap()
                break
            except Error as error:
                # What came in from others drew the screen anew in between; any other error, or one that stays, is told.
                if "not attached" not in error.message or element.evaluate("e => e.isConnected"):
                    raise
        self._settle()
        self.check()
        if main and self._turn() != turn:
            self._sent = main

    def _turn(self) -> str:
        return self.page.locator("[data-turn]").get_attribute("data-turn")

    def volts(self, pair: str, value: str) -> None:
        """Types a reading in volts for a pair."""
        row = self._one("pair", pair, self.page.get_by_role("group", name=pair, exact=True))
        box = self._one(f"field for volts of {pair!r}", "Volts", row.locator("input[inputmode=decimal]"))
        box.fill(value)
        box.blur()
        self._settle()
        self.check()

    def photo(self, slot: Name, file: Path) -> None:
        """Chooses a file for a photo and waits until the app has taken or refused it."""
        chooser = self.slot(slot)
        with self._answer(f"a photo for {slot!r}"):
            chooser.set_input_files(file)

    def sign(self, name: str | None = None, label: Name = re.compile("sign", re.I)) -> None:
        """Signs: types the full name, or draws if none is given; `label` tells one signature from another."""
        if name is None:
            self._draw(self._one("signature", label, self.page.locator("canvas").and_(self.page.get_by_label(label))))
        else:
            box = self._one("field", "for a full name", self.page.locator("[data-typed]"))
            box.fill(name)
            box.blur()
        self._settle()
        self.check()

    def complete(self, text: str) -> None:
        """Answers a form whatever it asks: `text` in each empty field, the first answer of each group, then the main button."""
        for box in self.page.locator("main input[type=text]:visible, main textarea:visible").all():
            if not box.input_value():
                box.fill(text)
                box.blur()
        for group in self.page.locator("fieldset:has(> .tiles)").all():
            if not group.locator(":checked").count():
                group.locator("label").first.tap()
        self._settle()
        main = self._one("main button", "at the bottom", self.page.locator("footer button.main"))
        with self._answer("the main button"):
            main.tap()

    def expect_unreachable(self) -> None:
        """From now until the next `open`, the browser's complaints that nobody answers are no failure."""
        self._unreachable_expected = True

    def expect_refusal(self, status: str) -> None:
        """The browser's complaint of an answer with this status is no failure: the desk is right to refuse."""
        self._refusal_expected = f"status of {status}"

    # Finding -------------------------------------------------------------------------------------------------------

    def target(self, name: Name) -> Locator:
        """The one button or link of this name."""
        return self._one("button or link", name, self._targets(name))

    def field(self, label: Name) -> Locator:
        """The one field of this label."""
        return self._one("field", label, self.page.get_by_label(label, exact=True).and_(self.page.locator("input, textarea")))

    def answer(self, group: Name, option: Name) -> Locator:
        """The one answer of this name in a group."""
        inside = self.page.get_by_role("group", name=group, exact=True).or_(
            self.page.get_by_role("radiogroup", name=group, exact=True)
        )
        inside = self._one("group", group, inside)
        tile = inside.get_by_role("radio", name=option, exact=True).or_(
            inside.get_by_role("checkbox", name=option, exact=True)
        )
        return self._one(f"answer to {group!r}", option, tile)

    def slot(self, label: Name) -> Locator:
        """The one place for a photo of this label."""
        return self._one("photo", label, self.page.get_by_label(label).and_(self.page.locator("input[type=file]")))

    # Reading -------------------------------------------------------------------------------------------------------

    def title(self) -> str:
        """The screen's title."""
        return self.page.locator("h1").inner_text().strip()

    def standing(self) -> str:
        """The banner that says what stands proved; empty outside a job."""
        return self._text(self.page.locator("[data-standing]"))

    def notice(self) -> str:
        """What the app just said; empty if nothing."""
        return self._text(self.page.locator("[role=status]:visible, [role=alert]:visible"))

    def plain(self) -> str:
        """The words on the screen, as one line of text."""
        return " ".join(self.page.locator("body").inner_text().split())

    def targets(self) -> list[str]:
        """The names of all buttons and links, in reading order."""
        both = self.page.get_by_role("button").or_(self.page.get_by_role("link"))
        return [(t.get_attribute("aria-label") or t.inner_text()).strip() for t in both.all()]

    def text(self) -> str:
        """The whole screen as a screen reader has it."""
        return self.page.locator("body").aria_snapshot()

    # Checking ------------------------------------------------------------------------------------------------------

    def check(self) -> None:
        """What must hold on every screen."""
        wrong = self.page.evaluate(CHECKS) + self._errors
        if wrong:
            self.fail("\n".join(wrong))

    def fail(self, why: str) -> None:
        """Fails the test with the screen as text; the picture goes to tests/out."""
        OUT.mkdir(exist_ok=True)
        picture = OUT / f"{self._name}.png"
        self.page.screenshot(path=picture, full_page=True)
        raise AssertionError(f"{why}\n\nThe screen ({self.page.url}, picture in {picture}):\n{self.text()}")

    def close(self) -> None:
        """Ends; an error in the console since the last check fails the test."""
        errors = list(self._errors)
        self._context.close()
        assert not errors, "\n".join(errors)

    # Helpers -------------------------------------------------------------------------------------------------------

    def _targets(self, name: Name) -> Locator:
        def both(exact: bool) -> Locator:
            button = self.page.get_by_role("button", name=name, exact=exact)
            return button.or_(self.page.get_by_role("link", name=name, exact=exact))

        exact = both(True)
        return exact if exact.count() else both(False)

    def _one(self, what: str, name: Name, found: Locator) -> Locator:
        count = found.count()
        if count != 1:
            self.fail(f"one {what} named {name!r} was expected; there are {count}")
        return found

    @contextmanager
    def _answer(self, deed: str):
        before = self.page.evaluate(_BEFORE)
        try:
            yield
            self.page.wait_for_function(_ANSWERED, arg=before)
        except Error as error:
            self.fail(f"no answer to {deed}: {error.message.splitlines()[0]}")
        self.check()

    def _settle(self) -> None:
        """Waits until no request is under way: what was typed is then kept, or refused with a notice."""
        try:
            # One turn of the event loop, so that a request caused by the last event has begun.
            self.page.evaluate("() => new Promise((done) => setTimeout(done, 0))")
            left = PATIENCE_MS
            while self._open_requests and left > 0:
                self.page.wait_for_timeout(10)
                left -= 10
        except Error as error:
            self.fail(error.message)
        if self._open_requests:
            self.fail(f"these requests got no answer: {', '.join(r.url for r in self._open_requests)}")

    def _draw(self, pad: Locator) -> None:
        pad.scroll_into_view_if_needed()
        box = pad.bounding_box()
        at = [(0.15, 0.7), (0.25, 0.25), (0.35, 0.7), (0.5, 0.35), (0.65, 0.7), (0.85, 0.4)]
        points = [(box["x"] + box["width"] * x, box["y"] + box["height"] * y) for x, y in at]
        self.page.mouse.move(*points[0])
        self.page.mouse.down()
        for point in points[1:]:
            self.page.mouse.move(*point, steps=4)
        self.page.mouse.up()

    def _text(self, found: Locator) -> str:
        return " ".join(" ".join(found.all_inner_texts()).split())

    def _error(self, text: str) -> None:
        refused = self._refusal_expected and self._refusal_expected in text
        if not (refused or self._unreachable_expected and _UNREACHABLE.search(text)):
            self._errors.append(f"in the console: {text}")
