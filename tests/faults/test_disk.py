"""Disks that are full or cannot be written. Each check mounts a disk of its own, in memory; in CI a refused mount fails it."""

from pathlib import Path

import pytest

from support import journal
from support.desk import Desk, command, refused
from support.folder import assert_unchanged, contents, settle
from support.mounts import fill, make_read_only, small_disk
from support.phone import Phone


@pytest.fixture
def disk(tmp_path: Path):
    """An empty disk of 2 MB."""
    with small_disk(tmp_path / "disk", "2m") as where:
        yield where


def test_disk_fills_while_the_app_runs(disk: Path, desks, phone: Phone, tmp_path: Path):
    """The app says so and keeps what was typed; once there is room the same input goes through and survives kill -9."""
    desk: Desk = desks(disk / "data").start()
    desk.stop()
    # An empty write-ahead log: otherwise it may have old pages to write over without asking the disk for room.
    settle(desk.folder)
    before = journal.read(desk.folder, tmp_path / "before")
    phone.open(desk.start().url)
    phone.tap("Sign on")
    title = phone.title()

    ballast = fill(disk)
    phone.complete("Ada Byron")
    assert "full" in phone.notice()
    assert phone.title() == title, "the screen moved on although nothing was kept"

    ballast.unlink()
    phone.complete("Ada Byron")
    assert "full" not in phone.notice()
    assert phone.title() != title
    desk.kill()
    desk.start().stop()

    after = journal.read(desk.folder, tmp_path / "after")
    bodies = journal.verify(after)
    assert {r["id"] for r in before} < {r["id"] for r in after}
    assert sum("Ada Byron" in str(body["fact"]) for body in bodies) == 1, "kept once, neither lost nor doubled"


def test_start_on_a_full_disk(disk: Path):
    """Nothing can be begun here; the message says why."""
    fill(disk)
    refused(command("desk", "--data", disk / "data", "--port", "0"), 1, "full", str(disk / "data"))


@pytest.mark.parametrize("begun", [False, True], ids=["empty folder", "folder with a journal"])
def test_read_only_folder(disk: Path, desks, begun: bool):
    """Refused by the folder's name before anything is shown, since nothing that is entered could be kept."""
    folder = disk / "data"
    folder.mkdir()
    if begun:
        desks(folder).start().stop()
    before = contents(folder)
    make_read_only(disk)
    refused(command("desk", "--data", folder, "--port", "0"), 1, str(folder), "written")
    assert_unchanged(folder, before)
