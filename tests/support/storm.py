"""A link to the office on which everything goes wrong that can: calls that are cut, doubled, late or slow, and answers that are lost.

It speaks HTTP/1.1 (RFC 9112) just so far as to know where a call ends; each call gets a connection of its own.
"""

import random
import re
import socket
import threading
import time
from collections import Counter
from collections.abc import Callable

from support.proxy import PATIENCE_S, Proxy

# A call that is sent again later comes after so many others.
LATE_BY = 3


class Storm(Proxy):
    """Listens on loopback. `calm` passes all calls on as they are. `faults` counts what went wrong."""

    def __init__(self, offices: Callable[[], list[str]], seed: int):
        """`offices` tells, at each call, the addresses (`host:port`) that answer; they take turns."""
        self._offices = offices
        self._random = random.Random(seed)
        self._lock = threading.Lock()
        self._late: list[tuple[int, bytes]] = []
        self._calls = 0
        self.calm = True
        self.faults: Counter[str] = Counter()
        super().__init__()

    def serve(self, near: socket.socket) -> None:
        """One call, with what goes wrong with it."""
        with near:
            try:
                call = _call(near)
                if call is None:
                    return
                with self._lock:
                    self._calls += 1
                    late = [c for at, c in self._late if at <= self._calls]
                    self._late = [(at, c) for at, c in self._late if at > self._calls]
                    turn = self._calls
                    kinds = ["pass", "cut there", "cut back", "no answer", "twice", "late", "slow"]
                    fault = "pass" if self.calm else self._random.choice(kinds)
                    where = self._random.random()
                    self.faults[fault] += 1
                for old in late:
                    self._ask(old, turn)
                if fault == "slow":
                    time.sleep(where / 2)
                if fault == "cut there":
                    self._ask(call[: int(len(call) * where)], turn, whole=False)
                    return
                if fault == "late":
                    with self._lock:
                        self._late.append((turn + LATE_BY, call))
                    return
                answer = self._ask(call, turn)
                if fault == "twice":
                    answer = self._ask(call, turn + 1)
                if fault == "cut back":
                    answer = answer[: int(len(answer) * where)]
                if fault != "no answer":
                    near.sendall(answer)
            except OSError:
                return

    def _ask(self, call: bytes, turn: int, whole: bool = True) -> bytes:
        """The answer of an office; nothing if there is none."""
        offices = self._offices()
        host, port = offices[turn % len(offices)].rsplit(":", 1)
        try:
            with socket.create_connection((host, int(port)), timeout=PATIENCE_S) as far:
                far.sendall(call)
                if not whole:
                    return b""
                parts = []
                while part := far.recv(65536):
                    parts.append(part)
                return b"".join(parts)
        except OSError:
            return b""


def _call(near: socket.socket) -> bytes | None:
    """One call, changed so that its answer ends with the connection; `None` if the caller went away."""
    near.settimeout(PATIENCE_S)
    got = b""
    while b"\r\n\r\n" not in got:
        part = near.recv(65536)
        if not part:
            return None
        got += part
    head, body = got.split(b"\r\n\r\n", 1)
    assert b"transfer-encoding" not in head.lower(), "the phone says how long its calls are"
    length = re.search(rb"(?im)^content-length:\s*(\d+)", head)
    left = int(length[1]) if length else 0
    while len(body) < left:
        part = near.recv(65536)
        if not part:
            return None
        body += part
    lines = [line for line in head.split(b"\r\n") if not line.lower().startswith(b"connection:")]
    return b"\r\n".join([*lines, b"connection: close"]) + b"\r\n\r\n" + body
