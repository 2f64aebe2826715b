"""Reads and verifies a journal with nothing of the app: sqlite3, hashlib, cbor2, and OpenSSL's Ed25519."""

import hashlib
import io
import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import cbor2
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

from support import cbor
from support.folder import database

BODY_KEYS = {"v", "device", "seq", "clock", "wall", "zone", "prev", "site", "job", "by", "fact"}
# Where a device says what it had of others, which entry of the job it wrote before, and what it commits to.
ALSO = {"seen", "after", "running", "signed_on", "practice", "personal"}


def split(stored: bytes) -> tuple[bytes, bytes]:
    """The signed body, and what opens its commitments (docs/formats.md)."""
    reader = io.BytesIO(stored)
    cbor2.CBORDecoder(reader).decode()
    return stored[: reader.tell()], stored[reader.tell() :]


def reveal(body: dict, openings: bytes) -> int:
    """Puts texts into the fact that stand committed to beside it; how many there were."""
    opened = cbor2.loads(openings) if openings else {}
    personal = body.pop("personal", {})
    (fields,) = body["fact"].values()
    assert not set(personal) & set(fields), "a text is committed to and stands in the fact as well"
    for name, (salt, text) in opened.items():
        assert len(salt) == 16 and personal[name] == hashlib.sha256(salt + text.encode()).digest(), f"{name} is not what was signed"
        fields[name] = text
    assert not openings or (opened and cbor.encode(opened) == openings)
    return len(opened)


def read(folder: Path, scratch: Path) -> list[sqlite3.Row]:
    """All entries, from a copy at `scratch`, so that looking changes nothing (a write-ahead log is taken along)."""
    shutil.copytree(folder, scratch)
    with closing(sqlite3.connect(database(scratch))) as db:
        db.row_factory = sqlite3.Row
        return db.execute("SELECT id, device, seq, body, sig FROM entry ORDER BY device, seq").fetchall()


def verify(rows: list[sqlite3.Row], rescued: bool = False) -> list[dict]:
    """Checks all that an entry promises and returns the bodies; raises at the first entry that breaks a promise.

    In a `rescued` journal numbers may be missing, and what stands on both sides of a gap cannot name each other.
    """
    bodies = []
    last: dict[bytes, tuple[int, bytes, list[int]]] = {}
    for row in rows:
        signed, openings = split(row["body"])
        body = cbor2.loads(signed)
        at = f"entry {row['seq']} of device {row['device'].hex()[:8]}"
        assert BODY_KEYS <= set(body) <= BODY_KEYS | ALSO, f"{at} has the keys {sorted(body)}"
        assert (body["device"], body["seq"]) == (row["device"], row["seq"]), f"{at}: the columns differ from the body"
        assert row["id"] == hashlib.sha256(signed).digest(), f"{at}: the id is not the SHA-256 of the body"
        # RFC 8032; raises InvalidSignature.
        Ed25519PublicKey.from_public_bytes(row["device"]).verify(row["sig"], signed)
        assert body["v"] == 1, f"{at} is of another version"
        assert cbor.encode(body) == signed, f"{at} is not deterministic CBOR"
        reveal(body, openings)

        seq, prev, clock = last.get(row["device"], (0, bytes(32), [-1, 0]))
        if row["seq"] == seq + 1 or not rescued:
            assert row["seq"] == seq + 1, f"{at} follows {seq}"
            assert body["prev"] == prev, f"{at} does not name the entry before it"
        # Kulkarni et al. 2014, theorem 1: e happened before f implies (l.e, c.e) < (l.f, c.f).
        assert body["clock"] > clock, f"{at}: the clock went from {clock} to {body['clock']}"
        last[row["device"]] = (row["seq"], row["id"], body["clock"])
        bodies.append(body)
    return bodies
