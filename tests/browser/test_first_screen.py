"""The first screen, on an empty folder and on the demo: at hand for thumb, keyboard and laptop, and from this machine alone."""

from pathlib import Path
from urllib.parse import urlsplit

import pytest

from support.desk import Desk
from support.phone import Phone

FOCUSED = "() => document.activeElement.id"
TARGETS = "() => [...document.querySelectorAll('main button, main input, main textarea, footer button')].filter((e) => e.checkVisibility()).map((e) => e.id)"


@pytest.fixture(params=["desk", "demo"])
def url(request: pytest.FixtureRequest, desks, tmp_path: Path) -> str:
    """The app's address, on an empty folder and on the demo."""
    desk: Desk = desks(tmp_path / "data", request.param).start()
    return desk.url


def test_opens_on_a_phone_and_on_a_laptop(url: str, phone: Phone):
    """What must hold on every screen holds on the first one, in both sizes."""
    phone.open(url)
    assert phone.title()
    phone.page.set_viewport_size({"width": 1280, "height": 800})
    phone.check()


def test_keyboard_reaches_all(url: str, phone: Phone):
    """Tab alone gets to everything that a thumb can tap; of a group of answers, to the group (WAI-ARIA radio pattern)."""
    phone.open(url)
    wanted = set(phone.page.evaluate(TARGETS))
    radios = set(phone.page.evaluate("() => [...document.querySelectorAll('[type=radio]')].map((e) => e.id)"))
    assert wanted, "there is nothing to do on this screen"
    reached = set()
    for _ in range(2 * len(wanted) + 10):
        phone.page.keyboard.press("Tab")
        reached.add(phone.page.evaluate(FOCUSED))
    assert wanted - radios <= reached


def test_nothing_comes_from_elsewhere(url: str, phone: Phone):
    """No font, script or picture is asked of any other machine: in a plant room none would answer."""
    asked: list[str] = []
    phone.page.on("request", lambda request: asked.append(request.url))
    phone.open(url)
    assert len(asked) > 1
    assert {urlsplit(address).netloc for address in asked} == {urlsplit(url).netloc}
