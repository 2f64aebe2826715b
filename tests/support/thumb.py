"""Counts what a person does on a phone: taps, characters, swipes and screens.

A field is one tap and its characters, a photo one tap, a swipe sixty per cent of the height. What has to be reached is scrolled to as a thumb
does it, swipe by swipe, until the whole of it stands between what sticks to the top and to the bottom.
"""

import math
from pathlib import Path

from playwright.sync_api import Locator

from .phone import Phone

SWIPE = 0.6

# How far something lies outside of what is seen, in pixels: above is negative. What lies in the foot is always seen.
_OUTSIDE = """(e) => {
  const target = e.labels?.[0] ?? e;
  const box = target.getBoundingClientRect();
  const edge = (name) => { const found = document.querySelector(name); return found?.classList.contains("stuck") ? found.getBoundingClientRect() : null; };
  const foot = edge(".foot");
  if (target.closest(".foot") && foot) return 0;
  const top = Math.max(0, edge(".standing")?.bottom ?? 0);
  const bottom = Math.min(innerHeight, foot?.top ?? innerHeight);
  if (box.bottom > bottom + 1) return Math.min(box.bottom - bottom, box.top - top);
  return box.top < top - 1 ? box.top - top : 0;
}"""


class Thumb:
    """A phone whose journeys are counted."""

    def __init__(self, phone: Phone):
        self.phone = phone
        self.taps = self.characters = self.swipes = self.screens = 0
        self.log: list[str] = []

    def tap(self, name: str) -> None:
        """Taps a button."""
        if self.phone.went_by_itself(name):
            return
        self._reach(self.phone.target(name), name)
        before = self.phone.title()
        self.phone.tap(name)
        self.taps += 1
        self._moved(before)

    def choose(self, group: str, option: str) -> None:
        """Taps an answer."""
        self._reach(self.phone.answer(group, option), option)
        before = self.phone.title()
        self.phone.choose(group, option)
        self.taps += 1
        self._moved(before)

    def fill(self, label: str, value: str) -> None:
        """Taps a field and types."""
        self._reach(self.phone.field(label), label)
        self.phone.fill(label, value)
        self.taps += 1
        self.characters += len(value)

    def fail(self, why: str) -> None:
        """Fails with the screen."""
        self.phone.fail(why)

    def photo(self, slot: str, file: Path) -> None:
        """Takes a photo."""
        # Once nothing else is missing, the main button takes it.
        if "Take the photo now" not in self.phone.targets():
            self._reach(self.phone.slot(slot), slot)
        before = self.phone.title()
        self.phone.photo(slot, file)
        self.taps += 1
        self._moved(before)

    def plain(self) -> str:
        """The words on the screen: reading costs nothing here."""
        return self.phone.plain()

    def counted(self) -> dict[str, int]:
        """What it came to."""
        return {"taps": self.taps, "characters": self.characters, "swipes": self.swipes, "screens": self.screens}

    def _moved(self, before: str) -> None:
        self.screens += self.phone.title() != before

    def _reach(self, target: Locator, name: str) -> None:
        height = self.phone.page.viewport_size["height"]
        outside = target.evaluate(_OUTSIDE)
        swipes = math.ceil(abs(outside) / (SWIPE * height))
        self.log.append(f"{'swipe ' * swipes}{name} ({self.phone.title()})")
        if swipes:
            self.swipes += swipes
            self.phone.page.evaluate("(by) => window.scrollBy(0, by)", math.copysign(swipes * SWIPE * height, outside))
