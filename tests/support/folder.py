"""Data folders and what is in them, seen from outside the app."""

import hashlib
import sqlite3
from pathlib import Path

# https://www.sqlite.org/fileformat2.html section 1.3: every SQLite database begins with these 16 bytes.
SQLITE_MAGIC = b"SQLite format 3\0"


def database(folder: Path) -> Path:
    """The one SQLite database of a data folder."""
    found = [f for f in folder.iterdir() if f.is_file() and f.read_bytes()[:16] == SQLITE_MAGIC]
    assert len(found) == 1, f"one database was expected in {sorted(f.name for f in folder.iterdir())}"
    return found[0]


def contents(folder: Path) -> dict[str, str]:
    """The SHA-256 of every file under `folder`, by its path."""
    return {
        str(f.relative_to(folder)): hashlib.sha256(f.read_bytes()).hexdigest()
        for f in sorted(folder.rglob("*"))
        if f.is_file()
    }


def assert_unchanged(folder: Path, before: dict[str, str]) -> None:
    """Every file that was there is there still, byte for byte."""
    now = contents(folder)
    changed = [name for name, digest in before.items() if now.get(name) != digest]
    assert not changed, f"changed or gone: {changed}"


def settle(folder: Path) -> Path:
    """Moves what the write-ahead log still holds into the database itself, so that one file is the whole truth."""
    file = database(folder)
    db = sqlite3.connect(file)
    db.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    db.close()
    assert not file.with_name(file.name + "-wal").exists(), "another process has the database open"
    return file
