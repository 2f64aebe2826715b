"""The page speaks the browser's language: a whole job in each, as `core/tests/it/languages.rs` has written it down."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser
from support.desk import Desk
from support.journey import play
from support.phone import Phone


@pytest.mark.parametrize("language", ["de", "es", "en-XA", "ar-XB"])
def test_a_whole_job(desk: Desk, browser: Browser, picture: Path, language: str):
    """Every tap of the story finds its button, and the page says in which language and which way it runs (HTML, lang and dir)."""
    phone = Phone(browser, f"language-{language}", locale=language)
    try:
        phone.open(desk.url)
        assert phone.page.locator("html").get_attribute("lang") == language
        assert phone.page.locator("html").get_attribute("dir") == ("rtl" if language == "ar-XB" else None)
        play(phone, f"in/{language}", photo=picture)
    finally:
        phone.close()


def test_a_language_is_chosen_in_the_app(desk: Desk, browser: Browser):
    """What is chosen goes before what the browser asks for, and a draft says that nobody has checked it."""
    phone = Phone(browser, "language-chosen", locale="de-DE")
    try:
        phone.open(desk.url)
        assert "Elektrofachkraft" in phone.plain()
        phone.tap("Sprache: Deutsch")
        phone.tap("English")
        assert phone.title() == "Jobs"
        assert phone.page.locator("form").get_attribute("lang") == "en"
        phone.open(desk.url)
        assert phone.title() == "Jobs"
    finally:
        phone.close()
