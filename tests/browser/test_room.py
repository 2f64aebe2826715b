"""Room for the first answer on a small phone: what folds was read before or is no caution, opens at a tap, and what stops never folds."""

from pathlib import Path

from playwright.sync_api import Browser

from support.desk import Desk
from support.journey import STORIES
from support.looker import Player

CAUTIONS = """() => [...document.querySelectorAll(".caution")].map((e) => ({
  key: `${form().dataset.route} ${e.textContent}`, forbids: e.matches(".forbid"), folded: !!e.closest(".folded"),
}))"""
# A gloved finger opens it wherever it meets the line.
OPENED = """() => {
  const folded = document.querySelector(".folded");
  const { left, top, width, height } = folded.getBoundingClientRect();
  const part = folded.firstElementChild;
  const [before, words] = [part.offsetHeight, part.textContent];
  document.elementFromPoint(left + width / 4, top + height / 2).click();
  return { words, grown: part.offsetHeight - before, same: part.textContent === words, focused: document.activeElement === part, inside: !!part.closest(".folded") };
}"""


def test_only_what_was_read_folds(browser: Browser, desk: Desk, picture: Path):
    """A whole story up to an indication, on 360 x 640."""
    player = Player(browser, desk, picture, set())
    page = player.page
    page.set_viewport_size({"width": 360, "height": 640})
    whole: set[str] = set()
    kinds: set[str] = set()

    def look(title: str) -> None:
        stopped = page.locator(".standing.forbid").count()
        assert not (stopped and page.locator(".folded").count()), title
        for caution in page.evaluate(CAUTIONS):
            assert not (caution["folded"] and caution["forbids"]), caution
            assert not caution["folded"] or caution["key"] in whole, f"{caution['key']} was never read"
            if caution["folded"]:
                kinds.add("caution")
            else:
                whole.add(caution["key"])
        for kind in ("facts", "steps"):
            if page.locator(f".folded > .{kind}").count():
                kinds.add(kind)

    player.play(*STORIES["wrong-reading"], look=look)
    assert kinds == {"caution", "facts", "steps"}
    player.context.close()


def test_a_tap_opens_it_and_it_stays_open(browser: Browser, desk: Desk, picture: Path):
    """Until the page goes: nothing of it is stored."""
    player = Player(browser, desk, picture, set())
    page = player.page
    page.set_viewport_size({"width": 360, "height": 640})
    player.play("people", "plan", "add-instruments", "circuits", "isolate")
    player.step("tap Nothing started")
    opened = page.evaluate(OPENED)
    assert opened["grown"] > 20 and opened["same"] and opened["focused"] and not opened["inside"], opened
    # Drawn anew, as after every act.
    page.evaluate("() => { app.innerHTML = app.innerHTML; ready(); }")
    assert opened["words"] not in page.locator(".folded").all_text_contents()
    page.reload()
    assert not page.locator(".folded > .caution").count()
    player.context.close()
