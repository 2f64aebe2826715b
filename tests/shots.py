#!/usr/bin/env python3
"""Pictures of the demo's screens, 390 x 844, into docs/screens/NAME.png.

    tests/.venv/bin/python tests/shots.py                          all of SHOTS, and what main() takes beside them
    tests/.venv/bin/python tests/shots.py plan stop                only these
    tests/.venv/bin/python tests/shots.py --android FOLDER         docs/screens/android again, from what
                                                                   `mvn test -Dstillbar.screens=FOLDER` left there
    tests/.venv/bin/python tests/shots.py --android FOLDER NAME    another one of them: NAME or NAME-SERIES

All are kept by support/pictures.py, in few colours; tests/outside/test_documents.py holds them to its bound.

Starts a fresh demo of its own, so that the pictures show the same jobs each time. `tests/run build` and any part with pytest
must have run once, for the binary and for tests/.venv.
"""

import re
import subprocess
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from support.chromium import launch
from support.desk import ROOT, Desk, command
from support.journey import play
from support.phone import Phone
from support.pictures import SCREENS, keep, stand_ins

PHOTO = ROOT / "core" / "src" / "demo" / "lock.png"
# Made up; its check character is right.
TAG = "STB555555555555X"

# NAME: the buttons to tap from the demo's first screen on, each by its accessible name.
SHOTS: dict[str, list[str]] = {
    "jobs": [],
    "who": ["Signed on: Mara Lind"],
    "all-locks": ["Locks on now"],
    "steps": ["Move the socket circuit of bay 3"],
    "stop": ["Move the socket circuit of bay 3", "Next: Test every pair"],
    "locks": ["Change the contactor of extractor fan 2", "Locks and keys"],
    "lock": ["Change the contactor of extractor fan 2", "Locks and keys", "Mara Lind on Q6 feeder switch"],
    "changed": ["Change the contactor of extractor fan 2", "Something changed"],
    "shift": ["Change the contactor of extractor fan 2", "Shift change"],
    "time-line": ["Change the contactor of extractor fan 2", "Time line"],
    "handed-back": ["Replace the outgoing breaker of washer 4"],
    "pass-over": ["Add a way for the new dryer", "Next: Switch off the loads", "Skip this step, give a reason"],
    "office": ["Office"],
    "near": ["Locks on now", "Pass locks to a phone beside you"],
    "near-code": ["Locks on now", "Pass locks to a phone beside you", "Show my code"],
    "lock-of-another": ["Signed on: Mara Lind", "Tomas Brandt", "Go on without PIN", "Locks on now", "Mara Lind, lock ML 3, on Q6 feeder switch"],
}

# One whole job, from which each screen is pictured the first time it is met, under its title.
WHOLE = ("people", "plan", "add-instruments", "circuits", "isolate", "prove", "work", "restore")


def shot(page: Page, name: str) -> None:
    """One picture; fails if the page is wider than the phone."""
    wide = page.evaluate("() => document.scrollingElement.scrollWidth")
    width = page.viewport_size["width"]
    if wide > width:
        raise SystemExit(f"{name} is {wide} px wide on a screen of {width} px")
    keep(page.screenshot(animations="disabled", caret="hide"), name)


def walk(browser, folder: Path) -> None:
    """Plays one whole job on an empty folder and pictures each screen once."""
    desk = Desk(folder).start()
    phone = Phone(browser, "walk", scale=1)
    met: set[str] = set()

    def picture(_line: str) -> None:
        name = "step-" + re.sub(r"[^a-z0-9]+", "-", phone.title().lower()).strip("-")
        if name not in met and "jobs" not in name:
            met.add(name)
            shot(phone.page, name)

    try:
        phone.open(desk.url)
        play(phone, *WHOLE, photo=PHOTO, between=picture)
    finally:
        phone.close()
        desk.kill()


def tags(browser, folder: Path) -> None:
    """A tag at a point, typed as printed: where it is bound, and what it answers."""
    desk = Desk(folder, "desk").start()
    phone = Phone(browser, "tags", scale=1)
    try:
        phone.open(desk.url)
        play(phone, "people", "plan", "add-instruments", "circuits", "isolate", photo=PHOTO)
        for button in ("The job", "Isolate Q4 feeder switch", "Tag of Q4 feeder switch"):
            phone.tap(button)
        phone.fill("Or the tag as printed", TAG)
        phone.tap("Use this tag")
        shot(phone.page, "tag-blank")
        for button in ("It hangs at Q4 feeder switch", "The job", "All jobs", "Scan a tag"):
            phone.tap(button)
        # There is no camera here: the panel stands over the screen until it is closed.
        phone.page.get_by_role("dialog").get_by_role("button", name="Stop scanning").tap()
        phone.page.get_by_role("dialog").wait_for(state="detached")
        shot(phone.page, "scan")
        phone.fill("Or the tag as printed", TAG)
        phone.tap("Look it up")
        shot(phone.page, "tag-answer")
    finally:
        phone.close()
        desk.kill()


def network(browser, folder: Path) -> None:
    """A site's supply network: drawn, held against a job before and after its points are locked."""
    desk = Desk(folder, "desk").start()
    phone = Phone(browser, "network", scale=1)

    def picture(_line: str) -> None:
        name = phone.title()
        if name.startswith(("Supply", "A source", "A switch")):
            # The latest of each: the network when all of it is drawn.
            shot(phone.page, "network-" + re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-"))

    try:
        phone.open(desk.url)
        play(phone, "people", "forgotten", "network", photo=PHOTO, between=picture)
        play(phone, "add-instruments", "circuits", "isolate", photo=PHOTO)
        phone.tap("The job")
        phone.tap("Supply network")
        shot(phone.page, "network-cut")
        phone.page.get_by_role("button", name="Larger").tap()
        shot(phone.page, "network-larger")
    finally:
        phone.close()
        desk.kill()


def printed(pdf: Path, name: str, *how: str) -> None:
    """One page as poppler prints it."""
    page = subprocess.run(["pdftoppm", "-png", "-singlefile", *how, pdf], capture_output=True, check=True, timeout=60)
    keep(page.stdout, name)


def sheets(folder: Path) -> None:
    """The upper left corner of a sheet of tags and of one of signs, as they are printed."""
    for name, words in {"sheet-of-tags": ["--sheet", "a4-3x8"], "sheet-of-signs": ["--signs"]}.items():
        pdf = folder / f"{name}.pdf"
        points = ("--point", "Q4 feeder switch", "--point", "Q9 changeover switch")
        made = command("tag", "new", "--site", "Brook Lane dye works", *points, *words, "-o", pdf)
        assert made.code == 0, made.err
        corner = ("-x", "0", "-y", "0", "-W", "620", "-H", "420")
        printed(pdf, name, "-r", "90", *corner)


def records(folder: Path, data: Path) -> None:
    """Pages of a finished job's record and of one that met an indication, as they print."""
    for name, job, pages in [
        ("record", "Replace the outgoing breaker of washer 4", (1, 2, 4)),
        ("record-stop", "Move the socket circuit of bay 3", (1,)),
    ]:
        pdf = folder / f"{name}.pdf"
        made = command("record", job, "-o", pdf, "--data", data)
        assert made.code == 0, made.err
        for page in pages:
            printed(pdf, f"{name}-{page}", "-r", "72", "-f", str(page), "-l", str(page))


def android(folder: Path, names: list[str]) -> None:
    """Takes over pictures of the Android shell: those called `names`, or all that are there already."""
    wanted = names or sorted(f.stem for f in (SCREENS / "android").glob("*.png"))
    found = stand_ins(folder, wanted)
    for name, file in found.items():
        # They are of a screen with two pixels a point.
        keep(file.read_bytes(), f"android/{name}", shrunk=2)
    if missing := set(wanted) - set(found):
        raise SystemExit(f"{folder} has no picture for {', '.join(sorted(missing))}")


def main(names: list[str]) -> None:
    """Takes the pictures called `names`, or all."""
    if names[:1] == ["--android"] and len(names) > 1:
        return android(Path(names[1]), names[2:])
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
                # The app opens where it was left; every picture's way begins at the jobs.
                while (up := phone.page.locator("header [data-up]")).count():
                    phone.tap(up.inner_text())
                for button in SHOTS[name]:
                    phone.tap(button)
                shot(phone.page, name)
                phone.close()
            if not names:
                walk(browser, Path(folder) / "walk")
                tags(browser, Path(folder) / "tags")
                network(browser, Path(folder) / "network")
                sheets(Path(folder))
                records(Path(folder), Path(folder) / "data")
        finally:
            browser.close()
            desk.kill()


if __name__ == "__main__":
    main(sys.argv[1:])
