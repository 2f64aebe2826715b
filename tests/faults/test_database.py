"""A damaged or newer database, a lost key: refused in plain words, left byte for byte as it was, and rescued on request."""

import json
import random
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from support import journal
from support.desk import Desk, command, refused
from support.folder import assert_unchanged, contents, settle


@pytest.fixture
def demo(desks, tmp_path: Path) -> Path:
    """The folder of a demo that was ended properly."""
    desk: Desk = desks(tmp_path / "data", "demo").start()
    desk.stop()
    settle(desk.folder)
    return desk.folder


def overwrite_middle(file: Path) -> None:
    """Half of the file becomes noise, as a failing flash cell leaves it."""
    data = bytearray(file.read_bytes())
    quarter = len(data) // 4
    # A fixed start, so that each run damages the same bytes.
    data[quarter : 3 * quarter] = random.Random(61243).randbytes(2 * quarter)
    file.write_bytes(data)


def truncate(file: Path) -> None:
    """The second half is gone, as after a copy that broke off."""
    data = file.read_bytes()
    file.write_bytes(data[: len(data) // 2])


def zero_header(file: Path) -> None:
    """The first page is empty, as after a crash of a file system without a journal."""
    data = file.read_bytes()
    file.write_bytes(bytes(4096) + data[4096:])


@pytest.mark.parametrize("damage", [overwrite_middle, truncate, zero_header])
def test_damage(demo: Path, desks, tmp_path: Path, damage):
    """Refused by naming the rescue, left as it is; the rescue keeps the damaged file and what opens then verifies."""
    file = settle(demo)
    damage(file)
    before = contents(demo)
    for _ in range(2):
        refused(command("desk", "--data", demo, "--port", "0"), 1, "stillbar rescue", str(demo))
        assert_unchanged(demo, before)

    rescued = command("rescue", "--data", demo)
    assert rescued.code == 0, rescued
    assert before[file.name] in contents(demo).values(), "the damaged original is gone"
    assert_unchanged(demo, {name: digest for name, digest in before.items() if name.startswith("photos")})

    desk = desks(demo).start()
    desk.stop()
    settle(demo)
    bodies = journal.verify(journal.read(demo, tmp_path / "copy"), rescued=True)
    # The device goes on with a chain of its own: the end of the old one may be among what is lost.
    assert bodies[-1]["seq"] == 1 or len({body["device"] for body in bodies}) == 2


def test_rescue_keeps_what_can_be_read(demo: Path, desks, tmp_path: Path):
    """One unreadable page near the end costs a few entries, not the journal."""
    rows = journal.read(demo, tmp_path / "whole")
    whole = {row["id"] for row in rows}
    file = settle(demo)
    data = bytearray(file.read_bytes())
    # https://www.sqlite.org/fileformat2.html section 1.3.2: the page size is at offset 16.
    page = int.from_bytes(data[16:18], "big")
    assert len(data) // page > 4
    # A signature stands in no index, so this is the page of the table that holds the last entry.
    start = data.index(rows[-1]["sig"]) // page * page
    data[start : start + page] = random.Random(1).randbytes(page)
    file.write_bytes(data)

    done = command("rescue", "--data", demo, "--json")
    assert done.code == 0, done
    said = json.loads(done.out)
    kept = {row["id"] for row in journal.read(demo, tmp_path / "kept")}
    assert len(kept & whole) > len(whole) // 2
    assert said["entries"] == len(kept) and Path(said["kept"]).is_dir()


def test_newer_database(demo: Path):
    """Written by a version that knows more: refused, byte for byte untouched."""
    with closing(sqlite3.connect(settle(demo))) as db:
        db.execute("PRAGMA user_version = 9999")
    settle(demo)
    before = contents(demo)
    refused(command("desk", "--data", demo, "--port", "0"), 1, "newer", str(demo))
    assert_unchanged(demo, before)


@pytest.mark.parametrize("content", [None, b"", bytes(32)], ids=["missing", "empty", "another"])
def test_device_key_is_not_the_one_that_signed(demo: Path, content: bytes | None):
    """Without its key the device cannot go on with its chain; it says so and does not begin another in silence."""
    key = demo / "device.key"
    key.unlink() if content is None else key.write_bytes(content)
    before = contents(demo)
    refused(command("desk", "--data", demo, "--port", "0"), 1, "device.key")
    assert_unchanged(demo, before)
