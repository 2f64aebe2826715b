"""Plays stories from inside a page, and looks at every screen on the way in other sizes, languages and colours."""

import base64
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Browser, Error, Page

from .desk import Desk
from .journey import lines
from .phone import PATIENCE_MS

_HERE = Path(__file__).parent
_PLAY = (_HERE / "swift.js").read_text()

# The desk as it is now, in the language of this browser, drawn as on arrival.
_DRAW = """async () => {
  const answer = await fetch("/");
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  document.documentElement.lang = page.documentElement.lang;
  document.documentElement.dir = page.documentElement.dir;
  // Whoever acted has read what stood here.
  noteRead();
  app.innerHTML = page.getElementById("shell-app").innerHTML;
  scrollTo(0, 0);
  ready();
  arrive();
}"""
# What beats once a second would draw the screen anew in the language that somebody looked in last.
_STILL = """Object.defineProperty(document, "hidden", { value: true })"""
# Two screens that differ in figures and names of parts only are laid out the same.
_TOLD = """() => `${form().dataset.route} ${app.textContent}`.replace(/[0-9a-f]{8,}|\\d+/g, "#")"""


class Looker:
    """A page that shows what the desk shows, in its own way."""

    def __init__(self, browser: Browser, desk: Desk, width: int, height: int, locale: str = "en-GB", percent: int = 100, **more):
        """`percent` is the size of its text, as a person sets it; `more` goes to the browser's context."""
        self.name = f"{width} x {height}, {locale}" + (f", text at {percent} %" if percent != 100 else "")
        size = {"width": width, "height": height}
        self.context = browser.new_context(viewport=size, screen=size, has_touch=True, locale=locale, timezone_id="Europe/London", **more)
        self.context.set_default_timeout(PATIENCE_MS)
        self.page: Page = self.context.new_page()
        self.page.add_init_script(_STILL)
        self.page.goto(desk.url)
        if percent != 100:
            self.page.evaluate("(share) => { const root = document.documentElement; root.style.fontSize = `${parseFloat(getComputedStyle(root).fontSize) * share}px`; }", percent / 100)

    def draw(self) -> Page:
        """Shows what the desk shows now."""
        self.page.evaluate(_DRAW)
        return self.page


class Player(Looker):
    """Plays stories."""

    def __init__(self, browser: Browser, desk: Desk, photo: Path, met: set[str]):
        """The photo is what every camera sees; `met` are the screens that need no look any more."""
        super().__init__(browser, desk, 390, 844)
        self._photo = base64.b64encode(photo.read_bytes()).decode()
        self._met = met

    def play(self, *journeys: str, look: Callable[[str], None] | None = None) -> None:
        """Plays these; `look` is called at each screen that was not met before, with its title."""
        self._speak()
        for line in lines(*journeys):
            self.step(line)
            told = self.page.evaluate(_TOLD) if look and line.split(" ")[0] in ("tap", "photo", "read") else ""
            if told and told not in self._met:
                self._met.add(told)
                look(self.page.evaluate("() => document.querySelector('h1').textContent"))
                self._speak()

    def step(self, line: str) -> None:
        """One line. What has to be seen is seen in other tests."""
        verb, rest = line.split(" ", 1)
        about, _, value = rest.partition(" = ")
        if verb in ("see", "unseen", "wait"):
            return
        try:
            self.page.evaluate(_PLAY, {"verb": verb, "about": about, "value": value, "photo": self._photo if verb == "photo" else ""})
        except Error as failed:
            raise AssertionError(f'"{line}": {failed.message}') from failed

    def _speak(self) -> None:
        # The desk speaks the language in which a page was asked for last.
        self.page.evaluate("() => fetch('/').then((answer) => answer.text())")
