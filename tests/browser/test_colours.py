"""Each screen of two stories in every theme: no violation that axe-core finds, letters that can be read in the sun, nothing told by colour alone."""

from importlib.resources import files
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from support.desk import Desk
from support.journey import STORIES
from support.looker import Looker, Player
from support.phone import CHECKS, Phone

AXE = (files("axe_playwright_python") / "axe.min.js").read_text()
VIOLATIONS = """async () => {
  const { violations } = await axe.run(document, { resultTypes: ["violations"] });
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html.slice(0, 160)} ${node.failureSummary.replace(/\\s+/g, " ")}`));
}"""
CONTRAST = (Path(__file__).parents[1] / "support" / "contrast.js").read_text()
PHONE = {"width": 390, "height": 844}
# Letters on another ground than the page's: under forced colours the browser lays a plate of that ground's colour under them.
FILLED = """() => [...document.querySelectorAll("button, .tile, .word, .caution, .standing")].filter((e) => {
  const ground = getComputedStyle(e).backgroundColor;
  return e.checkVisibility() && !/^rgba.*, 0\\)$/.test(ground) && ground !== getComputedStyle(document.body).backgroundColor;
}).map((e) => `${e.className} ${getComputedStyle(e).backgroundColor}`)"""
MOVES = """() => [...document.querySelectorAll("body *")].filter((e) => {
  const { transitionDuration, animationDuration } = getComputedStyle(e);
  return [...transitionDuration.split(","), ...animationDuration.split(",")].some((time) => parseFloat(time) > 0.01);
}).map((e) => e.className)"""


@pytest.mark.parametrize("story", ["whole-job", "wrong-reading"])
def test_axe_finds_nothing_and_letters_stand_out(browser: Browser, desk: Desk, picture: Path, story: str):
    """axe-core in light and dark; more contrast, as the device asks for it and as the button gives it, is 7:1 and more (WCAG 2.2, 1.4.6)."""
    player = Player(browser, desk, picture, set())
    plain = [Looker(browser, desk, **PHONE, color_scheme=scheme) for scheme in ("light", "dark")]
    strong = [Looker(browser, desk, **PHONE, color_scheme=scheme, contrast="more") for scheme in ("light", "dark")]
    chosen = Looker(browser, desk, **PHONE, color_scheme="dark")
    chosen.page.get_by_role("button", name="More contrast").tap()
    for looker in plain:
        looker.page.evaluate(AXE)
    wrong: dict[str, str] = {}

    def look(title: str) -> None:
        for looker in plain:
            page = looker.draw()
            for said in page.evaluate(VIOLATIONS) + page.evaluate(CONTRAST, 4.5):
                wrong.setdefault(said, title)
        for looker in [*strong, chosen]:
            for said in looker.draw().evaluate(CONTRAST, 7):
                wrong.setdefault(f"more contrast: {said}", title)

    player.play(*STORIES[story], look=look)
    for one in [player, *plain, *strong, chosen]:
        one.context.close()
    assert not wrong, "\n".join(f"{title}: {said}" for said, title in wrong.items())


def test_more_contrast_is_a_choice_that_stays(desk: Desk, phone: Phone):
    """It is kept by the browser, is told as pressed, and goes again."""
    phone.open(desk.url)
    paper = "() => getComputedStyle(document.body).backgroundColor"
    assert phone.page.evaluate(paper) != "rgb(255, 255, 255)"
    button = phone.page.get_by_role("button", name="More contrast")
    for pressed in (True, False):
        button.tap()
        phone.open(desk.url)
        assert button.get_attribute("aria-pressed") == str(pressed).lower()
        assert (phone.page.evaluate(paper) == "rgb(255, 255, 255)") is pressed


def test_a_persons_own_colours_leave_shapes_and_words(browser: Browser, desk: Desk, picture: Path):
    """With forced colours an answer that was given still looks given, a step that is next looks next, and signs are drawn."""
    looker = Looker(browser, desk, **PHONE, forced_colors="active")
    player = Player(browser, desk, picture, set())
    edge = "e => getComputedStyle(e).borderTopWidth + getComputedStyle(e).borderTopColor"
    met: set[str] = set()

    def look(_title: str) -> None:
        page = looker.draw()
        assert not page.evaluate(CHECKS)
        assert not page.evaluate(FILLED)
        for sort in (".tile", "button.step"):
            marked = page.locator(":is(.tile:has(:checked), .step.now)").and_(page.locator(sort))
            other = page.locator(f"{sort}:not(.now, .stop, :has(:checked))")
            if marked.count() and other.count():
                met.add(sort)
                assert marked.first.evaluate(edge) != other.first.evaluate(edge), sort
        signs = page.locator(".sign .line, .sign .solid")
        if signs.count():
            met.add("signs")
            assert signs.first.evaluate("e => getComputedStyle(e).stroke !== getComputedStyle(document.body).backgroundColor")

    player.play("people", "plan", "add-instruments", look=look)
    player.step("tap The job")
    look("")
    for one in (player, looker):
        one.context.close()
    assert met == {".tile", "button.step", "signs"}


def test_nothing_moves_for_whom_it_must_not(browser: Browser, desk: Desk, picture: Path):
    """With reduced motion nothing slides, fades or shrinks; without, something does, or this would find nothing."""
    still = Looker(browser, desk, **PHONE, reduced_motion="reduce")
    lively = Looker(browser, desk, **PHONE, reduced_motion="no-preference")
    player = Player(browser, desk, picture, set())
    moved = False

    def look(_title: str) -> None:
        nonlocal moved
        assert not still.draw().evaluate(MOVES)
        moved = moved or bool(lively.draw().evaluate(MOVES))

    player.play("people", look=look)
    for one in (player, still, lively):
        one.context.close()
    assert moved
