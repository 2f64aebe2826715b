"""The journal of the demo, verified without a line of the app's code."""

import sqlite3

import cbor2
import pytest
from cryptography.exceptions import InvalidSignature

from support import cbor, journal
from support.desk import Desk

# RFC 8949, appendix A: diagnostic notation on the left as Python values, bytes on the right.
RFC_8949_APPENDIX_A = [
    (0, "00"),
    (10, "0a"),
    (23, "17"),
    (24, "1818"),
    (100, "1864"),
    (1000, "1903e8"),
    (1000000, "1a000f4240"),
    (1000000000000, "1b000000e8d4a51000"),
    (18446744073709551615, "1bffffffffffffffff"),
    (-18446744073709551616, "3bffffffffffffffff"),
    (-1, "20"),
    (-1000, "3903e7"),
    (False, "f4"),
    (True, "f5"),
    (None, "f6"),
    (bytes.fromhex("01020304"), "4401020304"),
    ("", "60"),
    ("IETF", "6449455446"),
    ("\u6c34", "63e6b0b4"),
    ([1, [2, 3], [4, 5]], "8301820203820405"),
    (list(range(1, 26)), "98190102030405060708090a0b0c0d0e0f101112131415161718181819"),
    ({"a": 1, "b": [2, 3]}, "a26161016162820203"),
    (["a", {"b": "c"}], "826161a161626163"),
]


@pytest.fixture(scope="module")
def rows(tmp_path_factory) -> list[sqlite3.Row]:
    """The journal of a fresh demo."""
    folder = tmp_path_factory.mktemp("demo")
    desk = Desk(folder / "data", "demo").start()
    try:
        desk.stop()
    finally:
        desk.kill()
    return journal.read(folder / "data", folder / "copy")


@pytest.mark.parametrize(("item", "expected"), RFC_8949_APPENDIX_A)
def test_reference_encoder_agrees_with_the_rfc(item, expected):
    """The encoder that judges the app is itself held to the RFC's examples."""
    assert cbor.encode(item).hex() == expected


def test_reference_encoder_sorts_keys_as_the_rfc_does():
    """RFC 8949 section 4.2.1 lists these keys in their order."""
    order = [10, 100, -1, "z", "aa", (100,), (-1,), False]
    encoded = cbor.encode({key: None for key in reversed(order)})
    assert encoded == cbor.head(5, 8) + b"".join(cbor.encode(key) + b"\xf6" for key in order)


def test_every_entry_of_the_demo_verifies(rows):
    """Id, signature, chain, clock and encoding of each entry."""
    bodies = journal.verify(rows)
    # Several jobs at different steps, one of them finished, cannot be told in fewer.
    assert len(bodies) > 50


@pytest.mark.parametrize("column", ["id", "body", "sig"])
def test_one_flipped_bit_is_found(rows, column):
    """The check above can fail: one bit in the middle entry is enough."""
    changed = [dict(row) for row in rows]
    victim = changed[len(changed) // 2]
    flipped = bytearray(victim[column])
    flipped[len(flipped) // 2] ^= 1
    victim[column] = bytes(flipped)
    with pytest.raises((AssertionError, InvalidSignature, cbor2.CBORDecodeError)):
        journal.verify(changed)


def test_a_missing_entry_is_found(rows):
    """A journal with an entry taken out of its middle does not verify."""
    middle = len(rows) // 2
    with pytest.raises(AssertionError, match="follows|name the entry before"):
        journal.verify(rows[:middle] + rows[middle + 1 :])
