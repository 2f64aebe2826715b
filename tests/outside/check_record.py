"""Checks a record of Stillbar with nothing of Stillbar: written from docs/formats.md, with the standard library and `cryptography`.

Usage: check_record.py FILE. Exit codes: 0 holds, 1 does not hold, 2 no readable record. Sentences and pages are not worked out again.
"""

import base64
import hashlib
import json
import re
import sys
from datetime import datetime, timedelta, timezone

from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

KEYS = {"anchors", "claims", "entries", "format", "job", "made", "photos", "program", "seal", "version"}


def need(holds, says):
    if not holds:
        raise ValueError(says)


def sha256(data):
    return hashlib.sha256(data).digest()


def spelled(value):  # RFC 8785
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode()


def decoded(text):
    data = base64.b64decode(text, validate=True)
    need(base64.b64encode(data).decode() == text, "base64 in another spelling")
    return data


def item(data, at):
    """One CBOR item in the deterministic encoding (RFC 8949 section 4.2.1), and where the next begins."""
    major, number, at = data[at] >> 5, data[at] & 31, at + 1
    if number >= 24:
        size, least = {24: (1, 24), 25: (2, 1 << 8), 26: (4, 1 << 16), 27: (8, 1 << 32)}[number]
        number, at = int.from_bytes(data[at : at + size], "big"), at + size
        need(major < 6 and number >= least, "an entry is not in the deterministic encoding")
    if major < 2:
        return (-1 - number if major else number), at
    if major < 4:
        need(at + number <= len(data), "an entry ends too early")
        return (data[at : at + number].decode() if major == 3 else data[at : at + number]), at + number
    if major == 7:
        return {20: False, 21: True, 22: None}[number], at
    items, before = [], b""
    for _ in range(number * (major - 3)):
        start, (one, at) = at, item(data, at)
        if major == 5 and len(items) % 2 == 0:
            need(before < data[start:at], "the keys of an entry are not in order")
            before = data[start:at]
        items.append(one)
    return (dict(zip(items[::2], items[1::2])) if major == 5 else items), at


def written(value):
    """A value as such an item: what names the rules of a company is the hash of the bytes that stand in the entry."""
    if isinstance(value, bool) or value is None:
        return {False: b"\xf4", True: b"\xf5", None: b"\xf6"}[value]

    def head(major, number):
        size = next((size for size, least in ((0, 24), (1, 1 << 8), (2, 1 << 16), (4, 1 << 32)) if number < least), 8)
        kind = {0: number, 1: 24, 2: 25, 4: 26, 8: 27}[size]
        return bytes([major << 5 | kind]) + (number.to_bytes(size, "big") if size else b"")

    if isinstance(value, int):
        return head(0, value) if value >= 0 else head(1, -1 - value)
    if isinstance(value, str):
        return head(3, len(value.encode())) + value.encode()
    if isinstance(value, bytes):
        return head(2, len(value)) + value
    if isinstance(value, list):
        return head(4, len(value)) + b"".join(map(written, value))
    pairs = sorted((written(key), written(one)) for key, one in value.items())
    return head(5, len(pairs)) + b"".join(key + one for key, one in pairs)


def entry(wire):
    """What an entry says, with what is opened in it; its id, and its fact as `kind` and `says`."""
    need(set(wire) == {"body", "sig"}, "an entry with something else")
    data = decoded(wire["body"])
    body, end = item(data, 0)
    Ed25519PublicKey.from_public_bytes(body["device"]).verify(decoded(wire["sig"]), data[:end])
    ((kind, says),) = body["fact"].items()
    opened, last = item(data, end) if end < len(data) else ({}, end)
    need(last == len(data) and (opened or last == end), "something is behind an entry")
    need(body["v"] == 1, "an entry of another version")
    personal = body.get("personal", {})
    need(not set(personal) & set(says), "a text is there twice, signed and opened")
    for name, (salt, text) in opened.items():
        fits = name in personal and len(salt) == 16 and sha256(salt + text.encode()) == personal[name]
        need(fits, f"the {name} of an entry is not the one that was signed")
    says |= {name: opened[name][1] if name in opened else None for name in personal}
    return {**body, "id": sha256(data[:end]), "kind": kind, "says": says}


def chains(entries, job):
    """Checks that entries hang together; the last of each device in the job."""
    numbered, before, last = {(e["device"], e["seq"]): e for e in entries}, {}, {}
    need(len(numbered) == len({e["id"] for e in entries}) == len(entries), "an entry or a number is there twice")
    for (device, seq), e in sorted(numbered.items()):
        p, at = before.get(device), f"entry {seq} of device {device.hex()[:8]}"
        need(p is None or e["clock"] > p["clock"], f"{at}: the clock does not rise")
        need(p is None or seq > p["seq"] + 1 or e["prev"] == p["id"], f"{at} does not name the one before it")
        need(seq > 1 or e["prev"] == bytes(32), f"{at} is the first and names one before it")
        before[device] = e
        need(e["job"] in (None, job) and (e["kind"] == "job-opened") == (e["id"] == job), f"{at} belongs to another job")
        if job in (e["id"], e["job"]):
            p, last[device] = last.get(device), e
            need(e.get("after") in (None, p and p["id"]), f"{at}: the one before it in the job is missing")
            seen = [(numbered.get((other, number)), head) for other, number, head in e.get("seen", [])]
            need(all(s and s["id"] == head and job in (s["id"], s["job"]) for s, head in seen), f"{at} was written knowing one that is missing")
    need(any(e["id"] == job for e in entries), "no entry opens the job")
    return last


def claims(said, own, shared, last):
    """Readings, time line, photos, head and the rules of the company follow from the entries."""
    people = [e for e in shared if e["kind"] == "person-noted"]
    names = {e["says"]["corrects"] or e["id"]: e["says"]["name"] for e in people}

    def when(e):
        at = datetime.fromtimestamp(e["wall"] // 1000, timezone(timedelta(minutes=e["zone"]))).isoformat()
        name = names.get(e["by"])  # None where it is withheld.
        by = name if isinstance(name, str) else e["by"] and f"person {e['by'].hex()[:8]}"
        return {"at": at, "by": by, "no_pin": bool(by) and e.get("signed_on") == "without-pin", "entry": e["id"].hex()}

    head = b"".join(device + e["seq"].to_bytes(8, "big") + e["id"] for device, e in sorted(last.items()))
    need(said["head"] == sha256(head).hex(), "the head is another one")
    rules = next(e["says"].get("company") for e in own if e["kind"] == "job-opened")
    # One that was opened without any is done by the first that were heard of before it was handed back.
    until = next((i for i, e in enumerate(own) if e["kind"] == "handed-back"), len(own))
    heard = None if rules else next((e for e in own[:until] if e["kind"] == "company-heard"), None)
    rules = rules or (heard and heard["says"]["rules"])
    ruled = rules and {"name": rules["company"], "version": rules["version"], "sha256": sha256(written(rules)).hex()}
    if heard:
        ruled["heard"] = heard["id"].hex()
    need(said.get("company") == ruled, "other rules of a company")
    need([(x["seq"], x["kind"], x["when"]) for x in said["time_line"]] == [(e["seq"], e["kind"], when(e)) for e in own], "another time line")
    read = [(e["says"], when(e)) for e in own if e["kind"] in ("reading-taken", "presence-read", "discharge-read", "voltage-met")]
    need([(r["reading"], r["when"]) for r in said["readings"]] == [(s["reading"], at) for s, at in read], "another reading")
    need(all(s.get("first", s.get("at", r["first"])) == r["first"] and s.get("then", "") == r["then"] for r, (s, _) in zip(said["readings"], read)), "a pair")
    taken = [(e["says"]["sha256"], e["says"]["length"], when(e)) for e in own if e["kind"] == "photo-taken"]
    need(all((p["sha256"], p["length"], p["when"]) in taken for p in said["photos"]), "a photo that nobody took")


def streams(pdf, mark):
    """The content of a PDF's streams (ISO 32000-1, 7.3.8) whose dictionary has `mark`."""
    for begins in re.finditer(rb">>\s*stream\r?\n", pdf):
        dictionary = pdf[max(pdf.rfind(b" obj", 0, begins.start()), 0) : begins.start()]
        length = re.search(rb"/Length (\d+)", dictionary)
        if mark in dictionary and length:
            yield pdf[begins.end() : begins.end() + int(length[1])]


def check(data):
    """Raises what does not hold; false if this is no readable record."""
    pages, pictures = data.startswith(b"%PDF-"), {}
    if pages:
        pictures = {sha256(jpeg).hex(): jpeg for jpeg in streams(data, b"/DCTDecode")}
        data = next(streams(data, b"/EmbeddedFile"), b"")
    try:
        file = json.loads(data)
        readable = (file["format"], file["version"], set(file)) == ("stillbar-record", 1, KEYS)
    except (ValueError, TypeError, KeyError, RecursionError):
        return False
    if not readable:
        return False
    need(spelled(file) == data, "the file is not in the one spelling")
    seal, job = file["seal"], bytes.fromhex(file["job"])
    entries = sorted(map(entry, file["entries"]), key=lambda e: (e["clock"], e["device"]))
    last = chains(entries, job)
    own, shared = ([e for e in entries if (job in (e["id"], e["job"])) is mine] for mine in (True, False))
    claims(file["claims"], own, shared, last)
    signed = {(e["says"]["sha256"], copy) for e in own if e["kind"] == "photo-taken" for copy in e["says"].get("copies", [])}
    for photo in file["photos"]:
        need((photo["sha256"], photo["copy"]) in signed, "no signed entry names this copy of a photo")
        jpeg = decoded(photo["jpeg"]) if "jpeg" in photo else pictures.get(photo["copy"])
        need((jpeg is None and not pages) or sha256(jpeg or b"").hex() == photo["copy"], "a picture is not the copy that was signed")
    left = {key: value for key, value in file.items() if key not in ("anchors", "seal")}
    left["photos"] = [{key: value for key, value in photo.items() if key != "jpeg"} for photo in file["photos"]]
    need(set(seal) == {"device", "sig"} and bytes.fromhex(seal["device"]).hex() == seal["device"] and job.hex() == file["job"], "another spelling")
    Ed25519PublicKey.from_public_bytes(bytes.fromhex(seal["device"])).verify(decoded(seal["sig"]), b"stillbar-record-1:" + sha256(spelled(left)))
    return True


if __name__ == "__main__":
    try:
        with open(sys.argv[1], "rb") as given:
            holds = check(given.read())
    except Exception as why:  # Whatever is not as docs/formats.md says does not hold.
        sys.exit(f"Does not hold: {why!r}")
    print("Holds. Sentences and pages were not worked out again." if holds else "No readable record.")
    sys.exit(0 if holds else 2)
