"""Every screen of whole stories fits a phone, a smaller one and one with large text, in every language."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from support.desk import Desk
from support.journey import STORIES
from support.looker import Looker, Player

FIT = (Path(__file__).parents[1] / "support" / "fit.js").read_text()

SIZES = [{"width": 360, "height": 640}, {"width": 390, "height": 844}, {"width": 390, "height": 844, "percent": 130}]
# Two drafts, and two made-up ones: 40 % longer, and from right to left.
OTHERS = [{"width": 390, "height": 844, "locale": tag} for tag in ("de-DE", "es-ES", "en-XA", "ar-XB")]
LAPTOP = {"width": 1280, "height": 800}
# Where a screen has both, what is known stands beside what is answered.
BESIDE = """() => {
  const known = document.querySelector(".beside > :is(.facts, .drawing)");
  const answered = document.querySelector(".beside > :is(.entry, .choice, .pad, .photo, .signature)");
  return known ? known.getBoundingClientRect().left >= answered.getBoundingClientRect().right : null;
}"""
# A job whole, one that meets an indication, others of other systems and first words, several people and their locks, and what lies around.
# What others of these began with is not looked at again.
PLAYED = {name: STORIES[name] for name in ("whole-job", "wrong-reading", "several-locks", "forced-removal", "network", "site-transformer")}
PLAYED["house"] = ["people", "house", "add-instruments", "house-done", "house-again"]


@pytest.fixture(scope="module")
def met() -> set[str]:
    """The screens that were looked at."""
    return set()


@pytest.mark.parametrize("story", PLAYED)
def test_every_screen_fits(browser: Browser, desk: Desk, picture: Path, met: set[str], story: str):
    """Nothing cut off, broken or overlapping, no target too small, and on a step the first answer seen on arrival."""
    player = Player(browser, desk, picture, met)
    whole = story == "whole-job"
    lookers = [Looker(browser, desk, **one) for one in SIZES + ([LAPTOP, *OTHERS] if whole else [])]
    beside: set[bool] = set()
    wrong: dict[str, list[str]] = {}
    before = len(met)

    def look(title: str) -> None:
        for looker in lookers:
            for said in looker.draw().evaluate(FIT):
                wrong.setdefault(f"{title}: {said}", []).append(looker.name)
            if looker.page.viewport_size["width"] == LAPTOP["width"]:
                beside.add(looker.page.evaluate(BESIDE))

    player.play(*PLAYED[story], look=look)
    for one in [player, *lookers]:
        one.context.close()
    assert len(met) > before
    assert not whole or beside == {True, None}, "on a laptop what is known does not stand beside what is answered"
    told = "\n".join(f"{said} [{'; '.join(dict.fromkeys(where))}]" for said, where in wrong.items())
    assert not wrong, f"{len(wrong)} findings on {len(met) - before} screens\n{told}"
