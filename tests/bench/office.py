#!/usr/bin/env python3
"""How many entries a second an office takes in, beside what its databases take in of the same bytes by themselves.

    tests/.venv/bin/python tests/bench/office.py            500 phones with a day's work each
    tests/.venv/bin/python tests/bench/office.py 50         fewer phones

A day's work: 6 jobs of 100 entries (an assumption, as in docs/benchmarks.md). Phones push 100 entries at a time, 32 phones at once. The office,
its database and these phones share the same cores. `tests/run build` and any part with pytest must have run once.
"""

import hashlib
import queue
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from support.office import Admin, Field, Office
from support.postgres import Postgres

JOBS, A_JOB, A_PUSH, AT_ONCE = 6, 100, 100, 32


def day(number: int) -> Field:
    """A phone with a day's work in its chain."""
    field = Field(number + 1)
    site, job, point = field.begin(f"Site {number}")
    while len(field.chain) < JOBS * A_JOB:
        n = len(field.chain)
        if n % A_JOB == 0:
            told = {"who": "The foreman", "how": "Telephone", "about": "isolating"}
            field.write({"told": told}, site, job)
        field.write({"barrier-placed": {"what": "Barrier and danger sign", "at": f"Stair {n}, east side"}}, site, job)
    return field


def load(name: str, arguments: list[str], phones: int) -> None:
    """All phones into a fresh office."""
    with tempfile.TemporaryDirectory() as folder:
        office = Office(Path(folder) / "office", *arguments).start()
        admin = Admin(office)
        fields = [day(n) for n in range(phones)]
        enrol(office, admin, fields)
        todo: queue.Queue[Field] = queue.Queue()
        for field in fields:
            todo.put(field)
        took: list[float] = []

        def work() -> None:
            while True:
                try:
                    field = todo.get_nowait()
                except queue.Empty:
                    return
                for first in range(0, len(field.chain), A_PUSH):
                    begun = time.perf_counter()
                    said = field.push(first, first + A_PUSH)
                    took.append(time.perf_counter() - begun)
                    assert all(a["answer"] == "accepted" for a in said["answers"])

        begun = time.perf_counter()
        workers = [threading.Thread(target=work) for _ in range(AT_ONCE)]
        for worker in workers:
            worker.start()
        for worker in workers:
            worker.join()
        seconds = time.perf_counter() - begun
        entries = sum(len(f.chain) for f in fields)
        cuts = statistics.quantiles(took, n=100)
        print(f"{name}: {entries} entries of {phones} phones in {seconds:.1f} s, {entries / seconds:.0f} entries a second; "
              f"a push of {A_PUSH}: p50 {cuts[49] * 1000:.0f} ms, p99 {cuts[98] * 1000:.0f} ms")  # fmt: skip
        office.kill()


def enrol(office: Office, admin: Admin, fields: list[Field]) -> None:
    """The limit of tries is per address; these phones have one, so they are enrolled in the database instead."""
    text = admin.code("Bench")
    fields[0].enrol(office.url, text)
    for number, field in enumerate(fields):
        field.url, field.token = office.url, f"token-{number}"
    rows = [(f.device, hashlib.sha256(f.token.encode()).digest()) for f in fields]
    sql = (
        "INSERT INTO device (id, label, token, enrolled_ms, withdrawn_ms, held, last_seq, last_id, heard_ms) "
        "VALUES ({0}, '', {1}, 1, NULL, 0, 0, {2}, 0) ON CONFLICT (id) DO UPDATE SET token = excluded.token"
    )
    if office._arguments:
        name = office._arguments[1].split("/")[3].split("?")[0]
        lines = [sql.format(f"'\\x{d.hex()}'", f"'\\x{t.hex()}'", f"'\\x{bytes(32).hex()}'") + ";" for d, t in rows]
        for first in range(0, len(lines), 100):
            POSTGRES.run("psql", "-q", "-d", name, "-c", "\n".join(lines[first : first + 100]))
    else:
        with sqlite3.connect(office.folder / "office.db", timeout=30) as db:
            db.executemany(sql.format("?1", "?2", "zeroblob(32)"), rows)
        db.close()


def bare_sqlite(fields: list[Field]) -> None:
    """The same bytes into one table with the id as its key, a transaction for as many entries as a push has."""
    with tempfile.TemporaryDirectory() as folder:
        db = sqlite3.connect(Path(folder) / "bare.db", isolation_level=None)
        db.execute("PRAGMA journal_mode = WAL")
        db.execute("PRAGMA synchronous = FULL")
        db.execute("CREATE TABLE entry (id BLOB PRIMARY KEY, body BLOB NOT NULL, sig BLOB NOT NULL)")
        rows = [(hashlib.sha256(b).digest(), b, s) for f in fields for b, s in f.chain]
        begun = time.perf_counter()
        for first in range(0, len(rows), A_PUSH):
            db.execute("BEGIN IMMEDIATE")
            db.executemany("INSERT INTO entry VALUES (?, ?, ?)", rows[first : first + A_PUSH])
            db.execute("COMMIT")
        print(f"SQLite alone: {len(rows) / (time.perf_counter() - begun):.0f} entries a second")
        db.close()


def bare_postgres(fields: list[Field]) -> None:
    """The same with one INSERT of many rows a transaction, through psql."""
    url = POSTGRES.database()
    name = url.split("/")[3].split("?")[0]
    POSTGRES.run("psql", "-q", "-d", name, "-c", "CREATE TABLE entry (id BYTEA PRIMARY KEY, body BYTEA NOT NULL, sig BYTEA NOT NULL)")
    rows = [(hashlib.sha256(b).hexdigest(), b.hex(), s.hex()) for f in fields for b, s in f.chain]
    script = POSTGRES.folder / "bare.sql"
    with script.open("w") as out:
        for first in range(0, len(rows), A_PUSH):
            values = ",".join(f"('\\x{i}','\\x{b}','\\x{s}')" for i, b, s in rows[first : first + A_PUSH])
            out.write(f"INSERT INTO entry VALUES {values};\n")
    script.chmod(0o644)
    begun = time.perf_counter()
    POSTGRES.run("psql", "-q", "-d", name, "-f", script)
    print(f"PostgreSQL alone: {len(rows) / (time.perf_counter() - begun):.0f} entries a second")


if __name__ == "__main__":
    phones = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    POSTGRES = Postgres().start()
    try:
        load("The office over SQLite", [], phones)
        load("The office over PostgreSQL", ["--database", POSTGRES.database()], phones)
        fields = [day(n) for n in range(min(phones, 100))]
        bare_sqlite(fields)
        bare_postgres(fields)
    finally:
        POSTGRES.remove()
    print(subprocess.run(["nproc"], capture_output=True, text=True, check=True).stdout.strip(), "cores")
