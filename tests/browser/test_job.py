"""Whole jobs in the browser, as the core's journeys tell them."""

import re
from pathlib import Path

from playwright.sync_api import expect

from support.desk import Desk
from support.journey import play
from support.phone import Phone


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
