"""Fixtures for every check: a desk that is never left behind, a phone, a photo."""

import struct
import zlib
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Playwright, sync_playwright

# Before the first import of support, so that its assertions show their values when they fail.
pytest.register_assert_rewrite("support")

from support.chromium import launch
from support.desk import Desk
from support.phone import Phone


def pytest_addoption(parser: pytest.Parser) -> None:
    """Options of our own; tests/run hands them on."""
    parser.addoption("--sweep", action="store_true", help="faults at every single deed, where by default every few are tried")


@pytest.fixture(scope="session", autouse=True)
def state(tmp_path_factory: pytest.TempPathFactory):
    """What the app keeps outside its data stays out of this machine's own."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_STATE_HOME", str(tmp_path_factory.mktemp("state")))
        yield


@pytest.fixture
def desks():
    """Makes desks, `desks(folder, "demo")`, and ends each one with the test."""
    made: list[Desk] = []

    def make(folder: Path, *arguments: str) -> Desk:
        made.append(Desk(folder, *arguments))
        return made[-1]

    yield make
    for desk in made:
        desk.kill()


@pytest.fixture
def desk(desks, tmp_path: Path) -> Desk:
    """The app on an empty folder, running."""
    return desks(tmp_path / "data").start()


@pytest.fixture(scope="session")
def playwright() -> Playwright:
    """What drives every Chromium."""
    with sync_playwright() as playwright:
        yield playwright


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Browser:
    """One Chromium for all tests but those that need arguments of their own."""
    browser = launch(playwright)
    yield browser
    browser.close()


@pytest.fixture
def phone(browser: Browser, request: pytest.FixtureRequest) -> Phone:
    """A phone with nothing remembered."""
    phone = Phone(browser, request.node.name)
    yield phone
    phone.close()


@pytest.fixture
def picture(tmp_path: Path) -> Path:
    """A small photo: 64 x 48 pixels of grey steps as a PNG (ISO/IEC 15948), made here so that nothing needs a licence."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    width, height = 64, 48
    rows = b"".join(b"\0" + bytes((x * 4 + y) % 256 for x in range(width)) for y in range(height))
    header = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    file = tmp_path / "photo.png"
    file.write_bytes(
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")
    )
    return file
