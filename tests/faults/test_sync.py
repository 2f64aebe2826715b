"""Two phones, each the real app as a process, and the real office as one or two processes, over a link on which calls are cut, doubled,
late, slow or lost; phones, office and PostgreSQL are killed in between. Afterwards all journals are equal, and every photo byte for byte."""

import hashlib
import re
import sqlite3
import time
from contextlib import closing
from pathlib import Path

import cbor2
import pytest
from playwright.sync_api import Browser

from support import journal
from support.desk import PATIENCE_S, Desk
from support.folder import database
from support.journey import lines, play, step
from support.office import Admin, Office
from support.phone import Phone
from support.postgres import Postgres
from support.storm import Storm

# What the second electrician does beside the first: nothing that ends the first one's proof.
BARRIER = """
tap {to}
fill Barrier or sign = Danger sign {n}
fill Where it stands or hangs = Stair {n}, east side
tap Save this barrier or sign
tap The job
"""
TOMAS = """
tap {to}
fill Name = Tomas Brandt
tap Add this person
tap Replace the outgoing breaker of washer 4
""".format(to="Sign on") + "".join(BARRIER.format(to="Barriers and danger signs", n=n) for n in range(12))


@pytest.fixture(params=["sqlite", "postgresql"])
def offices(request: pytest.FixtureRequest, tmp_path: Path):
    """An office over SQLite, or two processes of one over PostgreSQL; and the database server, if there is one."""
    if request.param == "sqlite":
        office = Office(tmp_path / "office").start()
        yield [office], None
        office.kill()
        return
    server = Postgres().start()
    url = server.database()
    all_of_them = [Office(tmp_path / "office", "--database", url).start() for _ in range(2)]
    yield all_of_them, server
    for office in all_of_them:
        office.kill()
    server.remove()


def entries(desk: Desk) -> dict[bytes, dict]:
    """All entries of a phone by their ids, each with the id that its signed bytes have."""
    with closing(sqlite3.connect(f"file:{database(desk.folder)}?mode=ro", uri=True)) as db:
        rows = db.execute("SELECT id, body FROM entry").fetchall()
    signed = {id: journal.split(body)[0] for id, body in rows}
    assert all(hashlib.sha256(body).digest() == id for id, body in signed.items())
    return {id: cbor2.loads(body) for id, body in signed.items()}


def apart(one: Desk, other: Desk) -> list[dict]:
    """What only one of them has. What belongs to no site, and no entry of a site names, is each phone's own."""
    ours, others = entries(one), entries(other)
    all_of_them = ours | others
    named = {value for body in all_of_them.values() for value in _ids(body)}
    own = lambda id: all_of_them[id]["site"] is None and id not in named  # noqa: E731
    return [all_of_them[id] for id in set(ours) ^ set(others) if not own(id)]


def _ids(value):
    """All 32-byte strings in an entry, its place in the chain left out."""
    if isinstance(value, dict):
        for key, inner in value.items():
            if key not in ("prev", "device"):
                yield from _ids(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from _ids(inner)
    elif isinstance(value, bytes) and len(value) == 32:
        yield value


def home(phone: Phone, desk: Desk) -> None:
    """The first screen, from wherever the phone is."""
    phone.open(desk.url)
    for up in ("The job", "All jobs"):
        if up in phone.targets():
            phone.tap(up)


def to_office(phone: Phone, desk: Desk) -> None:
    """The office screen, from wherever the phone is."""
    home(phone, desk)
    phone.tap(re.compile("^Office"))


def join(phone: Phone, desk: Desk, code: str) -> None:
    """Joins the office by its code as text, and waits until it was reached."""
    to_office(phone, desk)
    phone.fill("Or the code as text", code)
    phone.tap("Use this code")
    phone.tap("Join this office")
    settled(phone, desk)


def settled(phone: Phone, desk: Desk) -> None:
    """Asks for exchanges until the office has everything of this phone."""
    until = time.monotonic() + 4 * PATIENCE_S
    while time.monotonic() < until:
        to_office(phone, desk)
        shown = phone.plain()
        if "Entries All sent." in shown and shown.count("All sent that the office asked for.") == 3 and "Exchange now" in shown:
            return
        for button in ("Send the originals over this link", "Exchange now"):
            if button in phone.targets():
                phone.tap(button)
    phone.fail("it was never done")


def do(phone: Phone, line: str, picture: Path) -> None:
    """One line of a journey; a tap on a screen that others' entries changed just then is refused, and done again."""
    step(phone, line, picture)
    while line.startswith("tap") and "changed before that tap" in phone.notice():
        step(phone, line, picture)


def again(desk: Desk, phone: Phone) -> None:
    """kill -9, and started again."""
    phone.expect_unreachable()
    desk.kill()
    desk.start(desk.port)
    phone.open(desk.url)


def test_whatever_goes_wrong_all_journals_are_equal(offices, desks, browser: Browser, picture: Path, tmp_path: Path):
    """A job is done by two phones while everything breaks; then the weather is fine for a moment."""
    processes, server = offices
    storm = Storm(lambda: [f"127.0.0.1:{o.port}" for o in processes], seed=9)
    admin = Admin(processes[0])
    one, other = desks(tmp_path / "one").start(), desks(tmp_path / "other").start()
    phones = [Phone(browser, "storm-one", 1), Phone(browser, "storm-other", 1)]
    mara, tomas = phones
    try:
        code = lambda *sites: re.sub(r"http://[\d.]+:\d+", storm.url, admin.code("A phone", *sites))  # noqa: E731
        mara.open(one.url)
        play(mara, "people", "plan", "add-instruments", "circuits", "isolate", photo=picture)
        join(mara, one, code())
        site = re.search(r'href="/sites/([0-9a-f]{64})"', admin.get("/sites"))[1]
        join(tomas, other, code(site))

        storm.calm = False
        deeds = 0

        def trouble(_: str = "") -> None:
            nonlocal deeds
            deeds += 1
            if deeds % 8 == 0:
                again(one, mara)
            if deeds % 11 == 0:
                again(other, tomas)
            if deeds % 9 == 0:
                # The same data and the same port: what a supervisor does.
                processes[deeds % len(processes)].kill()
                processes[deeds % len(processes)].start()
            if server and deeds == 20:
                server.kill()
                server.start()

        home(mara, one)
        mara.tap("Replace the outgoing breaker of washer 4")
        mara.tap("Next: Covers off: treat as live")
        home(tomas, other)
        theirs = iter([line for line in TOMAS.splitlines() if line])

        def both(line: str) -> None:
            # Tomas taps in between, as long as he has something to do.
            for told in theirs:
                do(tomas, told, picture)
                if told.startswith("tap"):
                    break
            trouble(line)

        for line in lines("prove"):
            do(mara, line, picture)
            if line.split()[0] in ("tap", "photo"):
                both(line)
        for told in theirs:
            do(tomas, told, picture)
            trouble()

        storm.calm = True
        # What the second phone sends last has to come back to the first.
        again(one, mara)
        settled(mara, one)
        again(other, tomas)
        settled(tomas, other)
        until = time.monotonic() + 2 * PATIENCE_S
        while apart(one, other) and time.monotonic() < until:
            mara.tap("Exchange now")
            tomas.tap("Exchange now")
        assert apart(one, other) == []
        assert len(entries(one)) > 60
        assert min(storm.faults[k] for k in ("cut there", "cut back", "no answer", "twice", "late", "slow")) > 0, storm.faults

        originals = [f for f in (one.folder / "photos").iterdir() if len(f.name) == 64]
        assert originals
        kept = {hashlib.sha256(f.read_bytes()).hexdigest() for f in (tmp_path / "office" / "photos").rglob("*") if f.is_file()}
        for photo in originals:
            assert hashlib.sha256(photo.read_bytes()).hexdigest() == photo.name
            assert photo.name in kept, "an original is not at the office"
        assert "do not match" not in mara.plain()
    finally:
        for phone in phones:
            phone.close()
        storm.close()
