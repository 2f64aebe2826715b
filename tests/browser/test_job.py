"""Whole jobs in the browser, as the core's journeys tell them."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import expect

from support.desk import Desk
from support.journey import STORIES, play
from support.phone import Phone

# What there is of the buttons with drawings: how high each is, whether something of it lies outside, and its smallest letters in pixels.
PICTURED = """() => {
  const tiles = [...document.querySelectorAll(".pictured .tile")].map((tile) => {
    const box = tile.getBoundingClientRect();
    const inside = (e) => {
      const part = e.getBoundingClientRect();
      return part.left >= box.left - 0.5 && part.right <= box.right + 0.5 && part.top >= box.top - 0.5 && part.bottom <= box.bottom + 0.5;
    };
    const texts = [...tile.querySelectorAll("svg text")];
    const svg = tile.querySelector("svg");
    const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
    return {
      label: tile.innerText.trim(),
      left: Math.round(box.left),
      height: box.height,
      clipped: ![...tile.querySelectorAll("svg, svg *, .name")].every(inside),
      letters: Math.min(...texts.map((text) => text.getAttribute("font-size") * scale)),
    };
  });
  return { tiles, columns: [...new Set(tiles.map((tile) => tile.left))], wide: document.scrollingElement.scrollWidth };
}"""


def test_from_plan_to_hand_back_with_the_power_cut_in_between(desk: Desk, phone: Phone, picture: Path):
    """One job whole; the process is killed (kill -9) after every tenth answer, and once with a form half filled."""
    answers = 0

    def cut(line: str) -> None:
        nonlocal answers
        answers += 1
        if answers % 10 == 0:
            phone.expect_unreachable()
            desk.kill()
            desk.start(desk.port)
            phone.open(desk.url)

    phone.open(desk.url)
    play(phone, "people", photo=picture)
    phone.tap("New job")
    phone.fill("What the job is", "Half a title")
    phone.expect_unreachable()
    desk.kill()
    desk.start(desk.port)
    phone.open(desk.url)
    assert phone.page.get_by_label("What the job is", exact=True).input_value() == "Half a title"
    phone.tap("All jobs")
    play(
        phone,
        "plan",
        "add-instruments",
        "circuits",
        "isolate",
        "prove",
        "work",
        "restore",
        photo=picture,
        between=cut,
    )
    assert "Handed back" in phone.standing()
    assert answers > 50


@pytest.mark.parametrize("story", ["split-phase", "site-transformer"])
def test_a_job_of_another_system(desk: Desk, phone: Phone, picture: Path, story: str):
    """Two lines on either side of a neutral, and a winding with its middle at earth: the same stories as on phones."""
    phone.open(desk.url)
    play(phone, *STORIES[story], photo=picture)
    assert "Handed back" in phone.standing()


@pytest.mark.parametrize("width, height", [(390, 844), (360, 640)])
@pytest.mark.parametrize("theme", ["dark", "light"])
def test_systems_are_picked_by_their_drawings(desk: Desk, phone: Phone, picture: Path, theme: str, width: int, height: int):
    """Thirteen buttons in at most two columns, each as high as a thumb needs, with all of its drawing and words inside."""
    phone.open(desk.url)
    play(phone, "people", photo=picture)
    phone.tap("New job")
    phone.page.emulate_media(color_scheme=theme)
    phone.page.set_viewport_size({"width": width, "height": height})
    found = phone.page.evaluate(PICTURED)
    assert len(found["tiles"]) == 13
    for tile in found["tiles"]:
        assert tile["height"] >= 48, tile
        assert not tile["clipped"], tile
        assert tile["letters"] >= 10, tile
    assert len(found["columns"]) <= 2 and found["wide"] <= width, found


def test_an_indication_on_l2_pe_ends_the_way_to_work(desk: Desk, phone: Phone, picture: Path):
    """L2 to PE is lit: the app says stop, offers no way to work, and still does not after a restart."""
    phone.open(desk.url)
    play(phone, "people", "plan", "add-instruments", "circuits", "isolate", "indication", photo=picture)
    for _ in range(2):
        assert "Stop, treat as live" in phone.standing()
        assert not any("Begin work" in name for name in phone.targets())
        phone.tap("The job")
        # The steps after the dead test cannot be opened, and nothing lets it be passed over.
        later = re.compile(r"\d*\s*(Prove the indicator again|Work)\b|Pass this over")
        assert not any(later.match(name) for name in phone.targets())
        phone.expect_unreachable()
        desk.kill()
        desk.start(desk.port)
        phone.open(desk.url)
        phone.tap("Next: Test every pair")


def test_the_browsers_way_back_leads_to_the_screen_before(desk: Desk, phone: Phone, picture: Path):
    """Not out of the app; and forward again to what was typed."""
    phone.open(desk.url)
    play(phone, "people", photo=picture)
    phone.tap("New job")
    phone.fill("What the job is", "Half a title")
    phone.page.go_back()
    expect(phone.page.get_by_role("heading", level=1)).to_have_text("Jobs")
    phone.page.go_forward()
    expect(phone.page.get_by_role("heading", level=1)).to_have_text("New job")
    expect(phone.page.get_by_label("What the job is", exact=True)).to_have_value("Half a title")
