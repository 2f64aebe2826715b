"""The desk is one person's: on a machine that several people use, nobody else reads its files or talks to it."""

import os
import stat
import tempfile
import urllib.error
import urllib.request
from collections.abc import Callable
from pathlib import Path

import pytest

from support.desk import PATIENCE_S, Desk, command
from support.folder import database

NAMES = ["journal.db", "journal.db-wal", "device.key", "in-use"]
PATHS = ["/", "/screen", "/stirred", "/style.css", "/?key=" + 32 * "0"]


def doors(folder: Path, port: int) -> list[str]:
    """What stays shut for whoever runs this: files that may not be read, and what the desk refuses by saying where its address stands."""
    shut = []
    for name in NAMES:
        try:
            (folder / name).read_bytes()
        except PermissionError:
            shut.append(name)
    for path in PATHS:
        try:
            urllib.request.urlopen(f"http://127.0.0.1:{port}{path}", timeout=PATIENCE_S)
        except urllib.error.HTTPError as why:
            if why.code == 403 and b"printed where it was started" in why.read():
                shut.append(path)
    return shut


def as_nobody(deed: Callable[[], list[str]]) -> list[str]:
    """What `deed` returns where the user nobody does it. A fork, because nobody may not be let as far as this Python's own files."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            os.setgroups([])
            os.setgid(65534)
            os.setuid(65534)
            os.write(writing, "\n".join(deed()).encode())
        finally:
            os._exit(0)
    os.close(writing)
    with os.fdopen(reading) as told:
        lines = told.read().splitlines()
    os.waitpid(child, 0)
    return lines


@pytest.fixture
def careless():
    """A shell that leaves everything open to everybody: umask 0."""
    before = os.umask(0)
    yield
    os.umask(before)


def open_to_others(folder: Path) -> list[str]:
    """Whatever under `folder`, itself among it, gives anything to group or others."""
    paths = [folder, *folder.rglob("*")]
    return [f"{p} {stat.filemode(p.stat().st_mode)}" for p in paths if p.stat().st_mode & 0o077]


def loosen(folder: Path) -> None:
    """As a version that did not care left it under the usual umask of 022."""
    for path in [folder, *folder.rglob("*")]:
        path.chmod(0o755 if path.is_dir() else 0o644)


def test_all_that_is_written_is_for_its_owner(careless, desks, tmp_path: Path):
    """Journal, log, index, lock, key, photos and the demo's mark, whatever the umask says; and what was open before is closed."""
    desk: Desk = desks(tmp_path / "demo", "demo").start()
    assert database(desk.folder) and any((desk.folder / "photos").iterdir())
    inside = [line for line in open_to_others(desk.folder) if f"{desk.folder}/office/" not in line]
    assert not inside, "\n".join(inside)
    desk.stop()
    loosen(desk.folder)
    desk.start()
    inside = [line for line in open_to_others(desk.folder) if f"{desk.folder}/office/" not in line]
    assert not inside, "\n".join(inside)


def test_a_rescue_leaves_nothing_open(careless, desks, tmp_path: Path):
    """Neither the new journal nor the damaged one that is kept."""
    desk: Desk = desks(tmp_path / "data").start()
    desk.stop()
    loosen(desk.folder)
    file = database(desk.folder)
    file.write_bytes(file.read_bytes()[:-4096])
    assert command("rescue", "--data", desk.folder).code == 0
    assert (desk.folder / "damaged-1" / file.name).is_file()
    assert not open_to_others(desk.folder), "\n".join(open_to_others(desk.folder))


def test_another_user_of_this_machine_is_kept_out(desks):
    """Neither the files nor the desk answer another user; it is told in a sentence where the right address stands."""
    if os.geteuid() != 0 and not os.environ.get("CI"):
        pytest.skip("becoming another user needs root; CI runs this check")
    with tempfile.TemporaryDirectory() as around:
        # The other user can get as far as the data folder itself.
        Path(around).chmod(0o711)
        desk: Desk = desks(Path(around) / "data").start()
        assert doors(desk.folder, desk.port) == PATHS, "nor is its own user let in without the key"
        assert as_nobody(lambda: doors(desk.folder, desk.port)) == NAMES + PATHS
        desk.stop()
