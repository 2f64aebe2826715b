"""Plays the core's journeys (`core/journeys/`, described in `core/src/journey.rs`) with a thumb in Chromium."""

from collections.abc import Callable, Iterator
from pathlib import Path

from .desk import ROOT
from .phone import Phone
from .thumb import Thumb

JOURNEYS = ROOT / "core" / "journeys"

# Whole stories by name, each a list of journeys; other shells play them all.
_LINES = (JOURNEYS / "stories.txt").read_text().splitlines()
STORIES = {name: journeys.split(" ") for name, _, journeys in (line.partition(": ") for line in _LINES if not line.startswith("#"))}


def lines(*names: str) -> Iterator[str]:
    """The lines of these journeys, in order, without comments."""
    for name in names:
        for line in (JOURNEYS / f"{name}.journey").read_text().splitlines():
            if line.strip() and not line.startswith("#"):
                yield line.strip()


def play(phone: Phone, *names: str, photo: Path, between: Callable[[str], None] | None = None) -> None:
    """Plays these journeys; `between` is called after each line that the app has answered."""
    for line in lines(*names):
        try:
            step(phone, line, photo)
        except AssertionError as failed:
            raise AssertionError(f'"{line}": {failed}') from failed
        if between and line.split()[0] in ("tap", "photo"):
            between(line)


def step(phone: Phone | Thumb, line: str, photo: Path) -> None:
    """One line."""
    verb, rest = line.split(" ", 1)
    about, _, value = rest.partition(" = ")
    match verb:
        case "tap":
            phone.tap(rest)
        case "fill":
            phone.fill(about, value)
        case "choose" | "untap":
            phone.choose(about, value)
        case "read" if value[0].isdigit():
            phone.volts(about, value)
        case "read":
            phone.choose(about, value)
        case "sign":
            phone.sign(value)
        case "photo":
            phone.photo(rest, photo)
        case "see" | "unseen":
            shown = phone.plain()
            if (_plain(rest) in shown) != (verb == "see"):
                phone.fail(f"{rest!r} is {'not ' if verb == 'see' else ''}on the screen")
        case "wait":
            pass  # The desk runs on the real clock; a journey's minutes matter to the core's own tests only.
        case _:
            raise AssertionError(f"no such verb: {verb}")


def _plain(text: str) -> str:
    # The text form of a screen has marks of its own; on the page the same words stand without them.
    return text.replace("[", "").replace("]", "").lstrip("> ")
