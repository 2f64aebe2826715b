"""Checks a record of Stillbar with nothing of Stillbar: written from docs/formats.md, with the standard library and `cryptography`.

Usage: check_record.py FILE. Exit codes: 0 holds, 1 does not hold, 2 no readable record. Pages of a PDF are not compared.
"""

import base64
import hashlib
import json
import re
import sys
from datetime import datetime, timedelta, timezone

from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

KEYS = {"anchors", "claims", "entries", "format", "job", "made", "photos", "program", "seal", "version"}
PERSONAL = {"person-noted": {"name", "qualification", "telephone"}, "told": {"who"}, "handed-back": {"to", "mark"},
            "key-taken": {"mark"}, "shift-taken": {"mark"}, "lock-forced": {"mark"}}  # fmt: skip


class Unreadable(Exception):
    """Not a record."""


def need(holds: object, says: str) -> None:
    """Ends the check where something does not hold."""
    if not holds:
        raise ValueError(says)


def spelled(value: object) -> bytes:
    """The one spelling of the JSON (RFC 8785)."""
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode()


def sha256(data: bytes) -> bytes:
    return hashlib.sha256(data).digest()


def item(data: bytes, at: int) -> tuple[object, int]:
    """One CBOR item in the deterministic encoding (RFC 8949 section 4.2.1), and where the next begins."""
    major, number = data[at] >> 5, data[at] & 31
    at += 1
    if number >= 24:
        size = {24: 1, 25: 2, 26: 4, 27: 8}[number]
        least, number = (24, 1 << 8, 1 << 16, 1 << 32)[number - 24], int.from_bytes(data[at : at + size], "big")
        need(major != 7 and number >= least and at + size <= len(data), "an entry is not in the deterministic encoding")
        at += size
    if major < 2:
        return (-1 - number if major else number), at
    if major < 4:
        need(at + number <= len(data), "an entry ends too early")
        raw = data[at : at + number]
        return (raw.decode() if major == 3 else raw), at + number
    if major == 4:
        items = []
        for _ in range(number):
            one, at = item(data, at)
            items.append(one)
        return items, at
    if major == 5:
        pairs, before = {}, b""
        for _ in range(number):
            key, end = item(data, at)
            need(before < data[at:end], "the keys of an entry are not in order")
            before, (pairs[key], at) = data[at:end], item(data, end)
        return pairs, at
    return {20: False, 21: True, 22: None}[number], at


def entry(wire: dict) -> dict:
    """The body of an entry with what is opened in it, its id under `id` and its fact under `kind` and `says`."""
    data, sig = (base64.b64decode(wire[k], validate=True) for k in ("body", "sig"))
    need(set(wire) == {"body", "sig"} and [base64.b64encode(x).decode() for x in (data, sig)] == [wire["body"], wire["sig"]], "base64")
    body, end = item(data, 0)
    Ed25519PublicKey.from_public_bytes(body["device"]).verify(sig, data[:end])
    ((kind, says),) = body["fact"].items()
    if end < len(data):
        opened, last = item(data, end)
        need(opened and last == len(data), "something is behind an entry")
        for name, (salt, text) in opened.items():
            fits = name in PERSONAL.get(kind, ()) and len(salt) == 16 and sha256(salt + text.encode()) == says[name]
            need(fits, f"the {name} of an entry is not the one that was signed")
            says[name] = text
    return {**body, "id": sha256(data[:end]), "kind": kind, "says": says}


def chains(entries: list[dict], job: bytes) -> dict[bytes, dict]:
    """Checks that entries hang together; the last of each device in the job."""
    need(len({e["id"] for e in entries}) == len(entries), "an entry is there twice")
    by_number, last_in_job = {(e["device"], e["seq"]): e for e in entries}, {}
    need(len(by_number) == len(entries), "two entries of a device have one number")
    before: dict[bytes, dict] = {}
    for e in sorted(entries, key=lambda e: (e["device"], e["seq"])):
        p, at = before.get(e["device"]), f"entry {e['seq']} of device {e['device'].hex()[:8]}"
        need(p is None or e["clock"] > p["clock"], f"{at}: the clock does not rise")
        need(p is None or e["seq"] > p["seq"] + 1 or e["prev"] == p["id"], f"{at} does not name the one before it")
        need(e["seq"] > 1 or e["prev"] == bytes(32), f"{at} is the first and names one before it")
        before[e["device"]] = e
        if job not in (e["id"], e["job"]):
            need(e["job"] is None and e["kind"] != "job-opened", f"{at} belongs to another job")
            continue
        p = last_in_job.get(e["device"])
        need(e.get("after") in (None, p and p["id"]), f"{at}: the one before it in the job is missing")
        for device, seq in e.get("seen", []):
            seen = by_number.get((device, seq))
            need(seen and job in (seen["id"], seen["job"]), f"{at} knew entry {seq} of {device.hex()[:8]}, which is missing")
        last_in_job[e["device"]] = e
    need(any(e["id"] == job and e["kind"] == "job-opened" for e in entries), "no entry opens the job")
    return last_in_job


def word(reading: object) -> str:
    """A reading as a record says it."""
    if isinstance(reading, str):
        return {"none": "no indication", "continuity": "continuity"}[reading]
    ((kind, number),) = reading.items()
    if kind == "lit":
        return "lit" if number is None else f"lit to {number} V"
    return f"{number // 1000}.{number % 1000:03}".rstrip("0").rstrip(".") + " V"


def claims(said: dict, own: list[dict], shared: list[dict], last: dict[bytes, dict]) -> None:
    """Readings, time line, photos and head follow from the entries."""
    names: dict[bytes, str] = {}
    for e in (e for e in shared if e["kind"] == "person-noted"):
        names[e["says"]["corrects"] or e["id"]] = e["says"]["name"]

    def when(e: dict) -> dict:
        at = datetime.fromtimestamp(e["wall"] // 1000, timezone(timedelta(minutes=e["zone"]))).isoformat()
        name = names.get(e["by"])
        by = None if e["by"] is None else name if isinstance(name, str) else f"person {e['by'].hex()[:8]}"
        return {"at": at, "by": by, "entry": e["id"].hex()}

    head = b"".join(device + e["seq"].to_bytes(8, "big") + e["id"] for device, e in sorted(last.items()))
    need(said["head"] == sha256(head).hex(), "the head is another one")
    need([(x["seq"], x["when"]) for x in said["time_line"]] == [(e["seq"], when(e)) for e in own], "the time line")
    read = [e for e in own if e["kind"] in ("reading-taken", "presence-read", "discharge-read")]
    need([(r["reading"], r["when"]) for r in said["readings"]] == [(word(e["says"]["reading"]), when(e)) for e in read], "readings")
    pairs = [((r["first"], r["then"]), e["says"]) for r, e in zip(said["readings"], read) if "first" in e["says"]]
    need(all(pair == (says["first"], says["then"]) for pair, says in pairs), "a reading's pair")
    taken = [(e["says"]["sha256"], e["says"]["length"], when(e)) for e in own if e["kind"] == "photo-taken"]
    need(all((p["sha256"], p["length"], p["when"]) in taken for p in said["photos"]), "a photo that nobody took")


def streams(pdf: bytes, mark: bytes) -> list[bytes]:
    """The content of a PDF's streams (ISO 32000-1, 7.3.8) whose dictionary has `mark`."""
    found = []
    for begins in re.finditer(rb">>\s*stream\r?\n", pdf):
        dictionary = pdf[max(pdf.rfind(b" obj", 0, begins.start()), 0) : begins.start()]
        length = re.search(rb"/Length (\d+)", dictionary)
        if mark in dictionary and length:
            found.append(pdf[begins.end() : begins.end() + int(length[1])])
    return found


def check(data: bytes) -> None:
    """Raises `Unreadable`, or anything else where the record does not hold."""
    pictures: dict[str, bytes] = {}
    pages = data.startswith(b"%PDF-")
    if pages:
        pictures = {sha256(jpeg).hex(): jpeg for jpeg in streams(data, b"/DCTDecode")}
        data = (streams(data, b"/EmbeddedFile") or [b""])[0]
    try:
        file = json.loads(data)
        readable = file["format"] == "stillbar-record" and file["version"] == 1 and set(file) == KEYS
    except (ValueError, TypeError, KeyError, RecursionError) as why:
        raise Unreadable(str(why)) from why
    if not readable:
        raise Unreadable("not a record of version 1")
    need(spelled(file) == data, "the file is not in the one spelling")
    seal, job = file["seal"], bytes.fromhex(file["job"])
    need(job.hex() == file["job"], "the job's id is not in small letters")
    entries = sorted(map(entry, file["entries"]), key=lambda e: (e["clock"], e["device"]))
    last = chains(entries, job)
    own, shared = ([e for e in entries if (job in (e["id"], e["job"])) is mine] for mine in (True, False))
    claims(file["claims"], own, shared, last)
    signed = {(e["says"]["sha256"], copy) for e in own if e["kind"] == "photo-taken" for copy in e["says"].get("copies", [])}
    for photo in file["photos"]:
        need((photo["sha256"], photo["copy"]) in signed, "no signed entry names this copy of a photo")
        jpeg = base64.b64decode(photo["jpeg"], validate=True) if "jpeg" in photo else pictures.get(photo["copy"])
        fits = jpeg is not None and sha256(jpeg).hex() == photo["copy"]
        need(fits or (jpeg is None and not pages), "a picture is not the copy that was signed")
    left = {k: v for k, v in file.items() if k not in ("anchors", "seal")}
    left["photos"] = [{k: v for k, v in photo.items() if k != "jpeg"} for photo in file["photos"]]
    device, sig = bytes.fromhex(seal["device"]), base64.b64decode(seal["sig"], validate=True)
    need(set(seal) == {"device", "sig"} and device.hex() == seal["device"] and base64.b64encode(sig).decode() == seal["sig"], "the seal")
    Ed25519PublicKey.from_public_bytes(device).verify(sig, b"stillbar-record-1:" + sha256(spelled(left)))


def main() -> int:
    try:
        with open(sys.argv[1], "rb") as file:
            check(file.read())
    except Unreadable as why:
        print(f"No readable record: {why}")
        return 2
    except InvalidSignature:
        print("Does not hold: a signature is not that of the device that is named.")
        return 1
    except Exception as why:  # Whatever is not as docs/formats.md says does not hold.
        print(f"Does not hold: {why!r}")
        return 1
    print("Holds. Sentences and pages were not worked out again.")
    return 0


if __name__ == "__main__":
    sys.exit(main())
