"""`stillbar` shows the office beside the phone: what is done in one appears in the other."""

import re
from pathlib import Path

from playwright.sync_api import Browser, expect

from support.desk import Desk
from support.phone import CHECKS, HEIGHT, WIDTH, Phone

OFFICE = re.compile(r"^The demo's office is at (http://127\.0\.0\.1:\d+)/ : sign in as admin with (\S+)$", re.MULTILINE)


def test_a_lock_on_the_phone_is_on_the_offices_board(browser: Browser, tmp_path: Path):
    """The demo's locks come by themselves, and one that is fitted now follows; the phone says when the office was reached."""
    desk = Desk(tmp_path / "demo", "demo").start()
    phone = Phone(browser, "beside")
    context = browser.new_context(viewport={"width": WIDTH, "height": HEIGHT}, color_scheme="dark", locale="en-GB")
    context.set_default_timeout(20_000)
    try:
        url, password = OFFICE.search(desk.said).groups()
        page = context.new_page()
        page.goto(url)
        page.get_by_label("Sign-in name").fill("admin")
        page.get_by_label("Password").fill(password)
        page.get_by_role("button", name="Sign in").click()
        page.get_by_label("Password so far").fill(password)
        page.get_by_label("New password").fill("four words in a row")
        page.get_by_label("The new one again").fill("four words in a row")
        page.get_by_role("button", name="Keep the new password").click()
        expect(page.get_by_text("ML 3").first).to_be_visible(timeout=30_000)

        phone.open(desk.url)
        for button in ("Change the contactor of extractor fan 2", "Locks and keys"):
            phone.tap(button)
        phone.choose("Where the lock is", "Q6 feeder switch")
        phone.fill("What is written on the lock", "ML 99")
        phone.choose("How it is locked", "Padlock on a hasp")
        phone.tap("Save lock, fitted by Mara Lind")
        # The board renews itself.
        expect(page.get_by_text("ML 99").first).to_be_visible(timeout=30_000)
        assert not page.evaluate(CHECKS)

        phone.tap("The job")
        phone.tap("All jobs")
        # The phone's first screen changes without a tap, when the office has it.
        expect(phone.page.get_by_text("All sent.")).to_be_visible(timeout=20_000)
        phone.tap("Office")
        assert "Brook Lane office" in phone.plain()
    finally:
        phone.close()
        context.close()
        desk.stop()
