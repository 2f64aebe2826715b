"""A PostgreSQL of the tests' own: in a folder that vanishes, on a socket in it, started and killed at will."""

import os
import shutil
import subprocess
import tempfile
import time
from pathlib import Path

from support.desk import PATIENCE_S, _die_with_parent

# Where Debian keeps the programs of each version; the newest is taken.
DEBIAN = Path("/usr/lib/postgresql")


class Postgres:
    """One server; `database` makes an empty database in it."""

    def __init__(self):
        found = sorted(DEBIAN.glob("*/bin/initdb"))
        assert found, f"PostgreSQL is not in {DEBIAN}; tests/run installs it (Debian: postgresql)"
        self._bin = found[-1].parent
        self.folder = Path(tempfile.mkdtemp(prefix="stillbar-pg-", dir="/tmp"))
        self._count = 0
        # PostgreSQL refuses to run as root; Debian's package brings a user for it.
        self._user = "postgres" if os.geteuid() == 0 else None
        if self._user:
            shutil.chown(self.folder, self._user, self._user)
        self._run("initdb", "-D", self.folder / "data", "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C")
        self._process: subprocess.Popen | None = None

    def start(self) -> "Postgres":
        """Starts it and waits until it answers."""
        words = [self._bin / "postgres", "-D", self.folder / "data", "-k", self.folder, "-c", "listen_addresses="]
        with (self.folder / "log").open("ab") as log:
            self._process = subprocess.Popen(
                words, stdout=log, stderr=log, stdin=subprocess.DEVNULL, cwd="/", user=self._user, group=self._user,
                extra_groups=[] if self._user else None, preexec_fn=_die_with_parent,
            )  # fmt: skip
        # A server that recovers says at once that it is not ready, so it is asked again until the time is up.
        ready = [self._bin / "psql", "-qh", self.folder, "-U", "postgres", "-c", "SELECT 1"]
        until = time.monotonic() + PATIENCE_S
        while time.monotonic() < until:
            if subprocess.run(ready, capture_output=True, check=False, cwd="/").returncode == 0:
                return self
            assert self._process.poll() is None, (self.folder / "log").read_text()
        raise AssertionError((self.folder / "log").read_text())

    def kill(self) -> None:
        """The power goes: SIGQUIT ends it at once without tidying up (postgres(1)); its next start recovers."""
        if self._process is not None:
            self._process.send_signal(3)
            self._process.wait(timeout=PATIENCE_S)

    def database(self) -> str:
        """The address of a new, empty database."""
        self._count += 1
        name = f"office_{self._count}"
        self._run("createdb", "-h", self.folder, "-U", "postgres", name)
        return f"postgres://postgres@localhost/{name}?host={self.folder}"

    def run(self, program: str, *arguments: str | Path) -> bytes:
        """One of PostgreSQL's own programs on this server, such as pg_dump."""
        return self._run(program, "-h", self.folder, "-U", "postgres", *arguments)

    def remove(self) -> None:
        """Ends it for good."""
        self.kill()
        shutil.rmtree(self.folder, ignore_errors=True)

    def _run(self, program: str, *arguments: str | Path) -> bytes:
        done = subprocess.run(
            [self._bin / program, *arguments], capture_output=True, cwd="/", user=self._user, group=self._user,
            extra_groups=[] if self._user else None, check=False,
        )  # fmt: skip
        assert done.returncode == 0, done.stderr.decode()
        return done.stdout
