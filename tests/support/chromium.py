"""Debian's Chromium under Playwright, which brings no browser of its own."""

import shutil

from playwright.sync_api import Browser, Playwright

# As root, without a graphics card, and without asking anything outside this machine.
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def launch(playwright: Playwright, *more: str) -> Browser:
    """A headless Chromium, with `more` arguments."""
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    assert found, "Chromium is not installed; tests/run installs it"
    return playwright.chromium.launch(executable_path=found, args=[*ARGUMENTS, *more])
