#!/usr/bin/env python3
"""Pictures of the demo's screens, 390 x 844, into docs/screens/NAME.png.

    tests/.venv/bin/python tests/shots.py            all of SHOTS
    tests/.venv/bin/python tests/shots.py plan stop  only these

Starts a fresh demo of its own, so that the pictures show the same jobs each time. `tests/run build` and any part with pytest
must have run once, for the binary and for tests/.venv.
"""

import sys
import tempfile
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from support.chromium import launch
from support.desk import ROOT, Desk
from support.phone import Phone

SCREENS = ROOT / "docs" / "screens"

# NAME: the buttons to tap from the first screen on, each by its accessible name.
SHOTS: dict[str, list[str]] = {
    "first": [],
}


def shot(page: Page, name: str) -> None:
    """One picture; fails if the page is wider than the phone."""
    wide = page.evaluate("() => document.scrollingElement.scrollWidth")
    width = page.viewport_size["width"]
    if wide > width:
        raise SystemExit(f"{name} is {wide} px wide on a screen of {width} px")
    SCREENS.mkdir(parents=True, exist_ok=True)
    page.screenshot(path=SCREENS / f"{name}.png", animations="disabled", caret="hide")
    print(SCREENS / f"{name}.png")


def main(names: list[str]) -> None:
    """Takes the pictures called `names`, or all."""
    unknown = set(names) - set(SHOTS)
    if unknown:
        raise SystemExit(f"there is no picture called {', '.join(sorted(unknown))}; there are: {', '.join(SHOTS)}")
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        desk = Desk(Path(folder) / "data", "demo").start()
        browser = launch(playwright)
        try:
            for name in names or SHOTS:
                # One pixel a point keeps a picture near 50 kB.
                phone = Phone(browser, name, scale=1)
                phone.open(desk.url)
                for button in SHOTS[name]:
                    phone.tap(button)
                shot(phone.page, name)
                phone.close()
        finally:
            browser.close()
            desk.kill()


if __name__ == "__main__":
    main(sys.argv[1:])
