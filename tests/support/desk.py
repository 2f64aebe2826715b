"""The real binary as a process: started on a folder, killed, started again, and never left behind."""

import ctypes
import os
import queue
import re
import signal
import subprocess
import threading
from contextlib import nullcontext
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]

# Start, stop and one command each take well under a second; this bound is for a loaded machine of two cores.
PATIENCE_S = 30

ADDRESS = re.compile(r"^Stillbar is at (http://127\.0\.0\.1:(\d+)/\?key=([0-9a-f]{32}))$")

_LIBC = ctypes.CDLL(None)
_PR_SET_PDEATHSIG = 1


def binary() -> Path:
    """The binary under test: tests/run names it in STILLBAR."""
    target = Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target"))
    path = Path(os.environ.get("STILLBAR", target / "release" / "stillbar"))
    assert path.is_file(), f"{path} is not there; tests/run builds it, or set STILLBAR to the binary to check"
    return path.resolve()


def _die_with_parent() -> None:
    # If the test runner itself is killed, no fixture runs; the kernel then ends the process (prctl(2)).
    _LIBC.prctl(_PR_SET_PDEATHSIG, signal.SIGKILL)


def _spawn(arguments: list[str], stdin: int = subprocess.DEVNULL, **streams) -> subprocess.Popen:
    return subprocess.Popen(
        [binary(), *arguments],
        stdin=stdin,
        text=True,
        encoding="utf-8",
        cwd="/",
        preexec_fn=_die_with_parent,
        **streams,
    )


@dataclass(frozen=True)
class Finished:
    """A command that ended by itself."""

    code: int
    out: str
    err: str


def command(*arguments: str | Path, piped: str | Path | None = None) -> Finished:
    """Runs the binary to its end, with a text or a file piped in; one that does not end is killed and fails the test."""
    words = [str(a) for a in arguments]
    text = piped if isinstance(piped, str) else None
    other = nullcontext(subprocess.DEVNULL if piped is None else subprocess.PIPE)
    with piped.open("rb") if isinstance(piped, Path) else other as stdin:
        process = _spawn(words, stdin, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    try:
        out, err = process.communicate(text, timeout=PATIENCE_S)
    except subprocess.TimeoutExpired:
        process.kill()
        out, err = process.communicate()
        raise AssertionError(f"`stillbar {' '.join(words)}` did not end.\nIt said:\n{out}{err}") from None
    return Finished(process.returncode, out, err)


def refused(done: Finished, code: int, *words: str) -> None:
    """Ended with `code` and an error that has all of `words`; nothing of the machinery shows."""
    assert done.code == code, done
    assert done.out == "", "an error belongs on the error stream"
    missing = [w for w in words if w not in done.err]
    assert not missing, f"the message lacks {missing}:\n{done.err}"
    for inner in ("panicked", "RUST_BACKTRACE", "os error", "Os {", "Err(", "SqliteFailure"):
        assert inner not in done.err, f"the message shows {inner!r}:\n{done.err}"


class Desk:
    """The field app on one data folder. `start`, `kill` and `stop` may follow each other in any order."""

    def __init__(self, folder: Path, *arguments: str):
        """`arguments` stand before `--data`: none for an empty folder, `demo` for the demo."""
        self.folder = folder
        # As it is printed: with the key that lets a browser in.
        self.url = ""
        self.port = 0
        self.key = ""
        self._arguments = list(arguments) or ["desk"]
        self._process: subprocess.Popen | None = None
        self._lines: queue.Queue[str | None] = queue.Queue()
        self._said: list[str] = []
        self._drains: list[threading.Thread] = []

    def start(self, port: int = 0) -> "Desk":
        """Starts it and waits for its address; an exit before that fails with all it said."""
        assert not self.running, "the desk is running already"
        words = [*self._arguments, "--data", str(self.folder), "--port", str(port)]
        self._said.append(f"$ stillbar {' '.join(words)}\n")
        self._lines = queue.Queue()
        self._process = _spawn(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        self._drains = [
            threading.Thread(target=self._drain, args=drained, daemon=True)
            for drained in ((self._process.stdout, self._lines), (self._process.stderr, None))
        ]
        for drain in self._drains:
            drain.start()
        while True:
            try:
                line = self._lines.get(timeout=PATIENCE_S)
            except queue.Empty:
                self.kill()
                raise AssertionError(f"no address within {PATIENCE_S} s.\n{self.said}") from None
            if line is None:
                self.kill()
                raise AssertionError(f"the desk ended before it said its address.\n{self.said}")
            if found := ADDRESS.match(line.rstrip("\n")):
                self.url, self.port, self.key = found[1], int(found[2]), found[3]
                return self

    def at(self, path: str) -> str:
        """The address of `path`, with the key, for who has no cookie; it begins with a slash."""
        return f"http://127.0.0.1:{self.port}{path}?key={self.key}"

    @property
    def running(self) -> bool:
        """Whether the process lives."""
        return self._process is not None and self._process.poll() is None

    @property
    def said(self) -> str:
        """All it wrote, on either stream, in all its lives."""
        return "".join(self._said)

    def kill(self) -> None:
        """kill -9: the battery falls out. Nothing in the process gets to tidy up."""
        if self._process is not None:
            self._process.kill()
            self._process.wait()
            # What it said last may still be in the pipes.
            for drain in self._drains:
                drain.join(PATIENCE_S)

    def freeze(self) -> None:
        """It hangs: it takes connections and answers nothing, until `thaw`."""
        self._process.send_signal(signal.SIGSTOP)

    def thaw(self) -> None:
        """It goes on where it was."""
        self._process.send_signal(signal.SIGCONT)

    def stop(self) -> None:
        """Ctrl-C, as a person ends it; it must end."""
        if not self.running:
            return
        self._process.send_signal(signal.SIGINT)
        try:
            self._process.wait(timeout=PATIENCE_S)
        except subprocess.TimeoutExpired:
            self.kill()
            raise AssertionError(f"the desk did not end on Ctrl-C.\n{self.said}") from None
        assert self._process.returncode == 0, f"Ctrl-C ended it with {self._process.returncode}.\n{self.said}"

    def _drain(self, stream, queued: queue.Queue | None) -> None:
        # A pipe that nobody empties would block the app after 64 KiB.
        with stream:
            for line in stream:
                self._said.append(line)
                if queued is not None:
                    queued.put(line)
        if queued is not None:
            queued.put(None)
