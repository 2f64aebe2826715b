#!/usr/bin/env python3
"""How long half a day's work takes to reach the office over a bad link, and whether a screen waits for it.

    tests/.venv/bin/python tests/bench/link.py

Three jobs from plan to hand-back, done with no office; then the phone joins one over 64 kbit/s each way with 150 ms each way. Screens are asked for
while entries and photos go out. `tests/run build` and any part with pytest must have run once. Prints the rows for docs/benchmarks.md.
"""

import re
import socket
import sqlite3
import statistics
import sys
import tempfile
import threading
import time
import urllib.request
from pathlib import Path
from urllib.parse import urlsplit

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from playwright.sync_api import sync_playwright
from support.chromium import launch
from support.desk import ROOT, Desk
from support.folder import database
from support.journey import play
from support.office import Admin, Office
from support.phone import Phone
from support.proxy import Proxy

BYTES_A_SECOND, LATENCY_S = 8000, 0.15
JOB = ["circuits", "isolate", "prove", "work", "restore"]


class Slow(Proxy):
    """Passes bytes on as slowly as the link does; all connections share it."""

    def __init__(self, url: str):
        at = urlsplit(url)
        self._to = (at.hostname, at.port)
        self.bytes = 0
        self._free = {True: 0.0, False: 0.0}
        self._lock = threading.Lock()
        super().__init__()

    def serve(self, near: socket.socket) -> None:
        """Both ways of a connection."""
        far = socket.create_connection(self._to)
        self.start(self._carry, far, near, False)
        self._carry(near, far, True)

    def _carry(self, source: socket.socket, sink: socket.socket, out: bool) -> None:
        try:
            while data := source.recv(1000):
                with self._lock:
                    self.bytes += len(data)
                    begins = max(self._free[out], time.monotonic())
                    self._free[out] = begins + len(data) / BYTES_A_SECOND
                    arrives = self._free[out] + LATENCY_S
                # A stream has one order, so waiting here delays what follows by no more than the link does.
                time.sleep(max(0, arrives - time.monotonic() - (LATENCY_S if len(data) == 1000 else 0)))
                sink.sendall(data)
            sink.shutdown(socket.SHUT_WR)
        except OSError:
            pass


def main() -> None:
    """Works, joins, watches."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        office = Office(Path(folder) / "office").start()
        desk = Desk(Path(folder) / "desk").start()
        browser = launch(playwright)
        phone = Phone(browser, "bench-link", 1)
        phone.open(desk.url)
        photo = ROOT / "core" / "src" / "demo" / "lock.png"
        play(phone, "people", "plan", "add-instruments", *JOB, photo=photo)
        for _ in range(2):
            phone.tap("All jobs")
            play(phone, "plan", "check-instruments", *JOB, photo=photo)
        phone.tap("All jobs")
        phone.tap(re.compile("^Office"))
        link = Slow(office.url)
        code = re.sub(r"http://[\d.]+:\d+", link.url, Admin(office).code("Bench"))
        phone.fill("Or the code as text", code)
        phone.tap("Use this code")
        began = time.monotonic()
        phone.tap("Join this office")
        asked: list[float] = []
        entries = None
        while True:
            at = time.perf_counter()
            shown = urllib.request.urlopen(desk.at("/screen")).read().decode()
            asked.append((time.perf_counter() - at) * 1000)
            if entries is None and "Last reached" in shown and "All sent." in shown:
                entries = time.monotonic() - began
                said = link.bytes
            if (entries is not None and shown.count("All sent that the office asked for.") >= 3) or time.monotonic() - began > 120:
                break
            time.sleep(0.05)
        rows = _count(desk)
        print(f"| {rows} entries over 64 kbit/s, 150 ms each way | all at the office after {entries:.1f} s, {said / 1000:.0f} kB both ways |")
        print(f"| a screen asked for meanwhile, {len(asked)} times | median {statistics.median(asked):.1f} ms, slowest {max(asked):.1f} ms |")
        phone.close()
        browser.close()
        desk.kill()
        office.kill()


def _count(desk: Desk) -> int:
    with sqlite3.connect(f"file:{database(desk.folder)}?mode=ro", uri=True) as db:
        return db.execute("SELECT count(*) FROM entry").fetchone()[0]


if __name__ == "__main__":
    main()
