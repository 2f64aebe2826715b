"""Folders that fail in known ways: a full disk, a disk that cannot be written."""

import os
import subprocess
from contextlib import contextmanager
from pathlib import Path

import pytest


def _run(*words: str) -> None:
    done = subprocess.run(words, capture_output=True, text=True, timeout=30)
    if done.returncode != 0:
        raise OSError(f"{' '.join(words)}: {done.stderr.strip()}")


@contextmanager
def small_disk(where: Path, size: str):
    """A disk of its own at `where`, in memory. Only root may mount; in CI a refusal fails the test."""
    if os.geteuid() != 0 and not os.environ.get("CI"):
        pytest.skip("mounting a small disk needs root; CI runs this check")
    where.mkdir(exist_ok=True)
    _run("mount", "-t", "tmpfs", "-o", f"size={size},mode=0700", "tmpfs", str(where))
    try:
        yield where
    finally:
        # Lazy, so that a process that a failed test left in the folder cannot keep the mount alive.
        _run("umount", "--lazy", str(where))


def make_read_only(where: Path) -> None:
    """From now on nothing at the mount `where` can be written, not even by root."""
    _run("mount", "-o", "remount,ro", str(where))


def fill(where: Path) -> Path:
    """Leaves no byte free at `where`; deleting the file it returns frees them again."""
    ballast = where / "ballast"
    with open(ballast, "wb", buffering=0) as file:
        for chunk in (65536, 4096, 1):
            try:
                while file.write(b"\0" * chunk):
                    pass
            except OSError:
                continue
    assert os.statvfs(where).f_bavail == 0, "the disk still has room"
    return ballast
