"""The process ended, the power cut, or the disk failing at every single write, sync, rename and removal, and a disk that is full at every
so many bytes: the app opens again and goes on, every entry that it said it kept is there, chains and photos are whole.

`tests/faults/shim/faults.c` does it, between the app and the system; what it takes back when the power is cut is what no fsync(2) has
promised (POSIX.1-2024, fsync; SQLite's own crash tests do the same, https://www.sqlite.org/testing.html section 3.3). By default every
few deeds, others on each kind of fault; `--sweep` takes every one.
"""

import hashlib
import os
import shutil
import subprocess
import tempfile
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from support import journal
from support.desk import PATIENCE_S, ROOT, binary, command
from support.folder import contents

JOURNEYS = ROOT / "core" / "journeys"
START = "tap Sign on\nfill Name = Mara Lind\ntap Add this person\ntap Signed on: Mara Lind\nfill Name = Tomas Brandt\ntap Add this person\n"
# What is done after each fault, without any: one more act, wherever the person was.
AFTER = "go /people\nfill Name = Ruth Adair\ntap Add this person\n"


@dataclass
class Run:
    """What one process said before it ended."""

    code: int
    out: str
    kept: set[str] = field(default_factory=set)
    refused: list[str] = field(default_factory=list)
    stopped: str = ""

    def __post_init__(self):
        for line in self.out.splitlines():
            word, _, rest = line.partition(" ")
            if word == "kept":
                self.kept |= set(rest.split())
            elif word == "refused":
                self.refused.append(rest)
            elif word == "stopped":
                self.stopped = rest


class Bench:
    """A folder on which the same acts are done again and again, each time with another fault."""

    def __init__(self, where: Path, acts: Path, shim: Path):
        self.where, self.acts, self.shim = where, acts, shim
        self.before: Path | None = None
        self.data = where / "disk" / "data"
        (where / "trash").mkdir()

    def prepare(self, script: str) -> None:
        """From here on every run begins with the folder as `script` leaves it."""
        self.run(script)
        self.before = self.where / "before"
        shutil.move(self.data, self.before)

    def fresh(self) -> None:
        """The folder as it is before the acts."""
        shutil.rmtree(self.data.parent, ignore_errors=True)
        # Each run is a device of its own: what one reached is not what another forgot.
        shutil.rmtree(self.where / "state", ignore_errors=True)
        for file in (self.where / "trash").iterdir():
            file.unlink()
        self.data.parent.mkdir()
        (self.where / "freed").unlink(missing_ok=True)
        if self.before:
            shutil.copytree(self.before, self.data)

    def run(self, script: str, **fault: object) -> Run:
        """Plays `script`, with the fault if there is one."""
        return self._run([self.acts, self.data], script, fault)

    def _run(self, words: list[Path | str], script: str, fault: dict) -> Run:
        if script:
            (self.where / "script").write_text(script)
            words = [*words, self.where / "script"]
        environment = os.environ | {"XDG_STATE_HOME": str(self.where / "state")}
        if fault:
            # The folder that the data folder is made in belongs to the disk as well.
            fault = {"FOLDER": self.data.parent, "TRASH": self.where / "trash", **fault}
            environment |= {f"FAULT_{name}": str(value) for name, value in fault.items()} | {"LD_PRELOAD": str(self.shim)}
        done = subprocess.run(words, env=environment, capture_output=True, text=True, timeout=PATIENCE_S, check=False)
        assert not done.stderr, f"{fault}: {done.stderr}"
        return Run(done.returncode, done.stdout)

    def deeds(self, script: str, words: list[Path | str] | None = None) -> int:
        """How many deeds the acts take when nothing goes wrong."""
        self.fresh()
        tally = self.where / "tally"
        whole = self._run(words or [self.acts, self.data], script, {"TALLY": tally})
        assert whole.code == 0, whole.out
        return int(tally.read_text())

    def check(self, ended: Run, at: str) -> None:
        """It opens, goes on, and all that was promised is there."""
        after = self.run(AFTER)
        assert after.code == 0, f"{at}: it does not go on: {after.out}"
        shutil.rmtree(self.where / "copy", ignore_errors=True)
        rows = journal.read(self.data, self.where / "copy")
        bodies = journal.verify(rows)
        lost = (ended.kept | after.kept) - {row["id"].hex() for row in rows}
        assert not lost, f"{at}: acknowledged and lost: {lost}"
        assert sum("Ruth Adair" in str(body["fact"]) for body in bodies) == 1
        for body in bodies:
            if photo := body["fact"].get("photo-taken") if isinstance(body["fact"], dict) else None:
                original = self.data / "photos" / photo["sha256"]
                assert hashlib.sha256(original.read_bytes()).hexdigest() == photo["sha256"], f"{at}: a photo is not what it was"
                for copy in (".320.jpg", ".960.jpg", ".1600.jpg"):
                    assert original.with_name(original.name + copy).stat().st_size, f"{at}: a copy is missing"


@pytest.fixture(scope="module")
def shim(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """What stands between the app and the system, compiled."""
    built = tmp_path_factory.mktemp("shim") / "faults.so"
    source = ROOT / "tests" / "faults" / "shim" / "faults.c"
    subprocess.run(["cc", "-O1", "-Wall", "-Wextra", "-Werror", "-shared", "-fPIC", "-o", built, source], check=True)
    return built


@pytest.fixture
def bench(shim: Path, tmp_path: Path):
    """An empty one, in memory if there is such a place: what is asked of the disk is counted, not waited for."""
    acts = binary().parent / "examples" / "acts"
    assert acts.is_file(), f"{acts} is not there; tests/run builds it"
    memory = Path("/dev/shm")
    with tempfile.TemporaryDirectory(dir=memory if memory.is_dir() else tmp_path) as where:
        yield Bench(Path(where), acts, shim)


@pytest.fixture(params=["first start", "isolate"])
def story(bench: Bench, request: pytest.FixtureRequest) -> str:
    """The acts: those of a first start in an empty folder, or a dozen with two photos in a job that is under way."""
    if request.param == "first start":
        return START
    read = lambda name: (JOURNEYS / f"{name}.journey").read_text()  # noqa: E731
    bench.prepare("".join(map(read, ["people", "plan", "add-instruments", "circuits"])))
    return "\n".join(line for line in read("isolate").splitlines() if not line.startswith(("see", "wait")))


@pytest.fixture
def every(request: pytest.FixtureRequest):
    """`every(deeds, most)`: the deeds to try, at most `most` of them unless all are asked for, evenly and with both ends."""

    def pick(deeds: int, most: int) -> list[int]:
        step = 1 if request.config.getoption("--sweep") else max(1, -(-deeds // most))
        return sorted({*range(1 + deeds % step, deeds + 1, step), deeds})

    return pick


@pytest.mark.parametrize("how", ["kill", "cut", "torn"])
def test_ended_at_every_deed(bench: Bench, story: str, how: str, every):
    """SIGKILL in the middle of a write; the power cut with all lost that was not promised; or with some of it lost."""
    deeds = bench.deeds(story)
    assert deeds > 100
    for at in every(deeds, 40):
        bench.fresh()
        ended = bench.run(story, HOW=how, AT=at)
        assert ended.code == -9, f"{how} at {at}: {ended.out}"
        bench.check(ended, f"{how} at {at} of {deeds}")


@pytest.mark.parametrize("how", ["eio", "enospc"])
def test_failing_once_at_every_deed(bench: Bench, story: str, how: str, every):
    """The app goes on, or says that the disk did not take it, and the same tap once more does it; or it does not start and says why."""
    deeds, refused, stopped = bench.deeds(story), 0, 0
    for at in every(deeds, 40):
        bench.fresh()
        ended = bench.run(story, HOW=how, AT=at)
        said = [*ended.refused, *filter(None, [ended.stopped])]
        assert all(plain(text) for text in said), f"{how} at {at}: {said}"
        # Only the start may end it, and nothing was acknowledged by then.
        assert ended.code == 0 or ended.stopped and not ended.kept, f"{how} at {at}: {ended.out}"
        refused += bool(ended.refused)
        stopped += ended.code != 0
        bench.check(ended, f"{how} at {at} of {deeds}")
    assert refused + stopped > 2, "the faults hit nothing"


def test_full_at_every_so_many_bytes(bench: Bench, story: str, every):
    """The disk has room for N more bytes. What does not fit is told; when there is room again the same tap does it."""
    bench.fresh()
    enough = bench.run(story, BYTES=10**9)
    assert enough.code == 0 and not enough.refused
    # The largest that the folder can have grown by, log included.
    grown = sum(f.stat().st_size for f in bench.data.rglob("*") if f.is_file()) + 1_000_000
    refused = stopped = 0
    sizes = [at * 997 for at in every(grown // 997, 40)]
    for size in sizes:
        bench.fresh()
        ended = bench.run(story, BYTES=size, FREED=bench.where / "freed")
        for text in [*ended.refused, *filter(None, [ended.stopped])]:
            assert plain(text) and ("full" in text or "room" in text or "space" in text), f"{size} bytes: {text}"
        assert ended.code == 0 or ended.stopped and not ended.kept, f"{size} bytes: {ended.out}"
        refused += bool(ended.refused)
        stopped += ended.code != 0
        bench.check(ended, f"full after {size} bytes")
    assert refused + stopped > 2, "the disk was never full"


def plain(text: str) -> bool:
    """Words for a person, nothing of the machinery."""
    return not any(inner in text for inner in ("os error", "Os {", "Err(", "SqliteFailure", "panicked"))


def test_a_disk_that_lies_is_found(bench: Bench, every):
    """A check of the check: where fsync promises nothing, a cut must lose what was acknowledged, and this must see it."""
    deeds, lost = bench.deeds(START), 0
    for at in every(deeds, 30):
        bench.fresh()
        ended = bench.run(START, HOW="cut", AT=at, LIES=1)
        try:
            bench.check(ended, f"a lie at {at}")
        except AssertionError:
            lost += 1
    assert lost > 2


@pytest.mark.parametrize("how", ["kill", "cut", "torn", "eio", "enospc"])
def test_a_rescue_that_ends_at_every_deed(bench: Bench, how: str, every):
    """The rescue of a damaged journal, ended or failing at any deed, is done by the next one; nothing that proves itself is lost."""
    bench.prepare(START)
    database = bench.before / "journal.db"
    data = bytearray(database.read_bytes())
    data[:4096] = bytes(4096)
    database.write_bytes(data)
    rescue = [binary(), "rescue", "--data", bench.data]
    deeds = bench.deeds("", rescue)
    damaged = contents(bench.before)["journal.db"]
    for at in every(deeds, 40):
        bench.fresh()
        environment = {"FOLDER": bench.data.parent, "TRASH": bench.where / "trash", "HOW": how, "AT": at}
        words = {f"FAULT_{name}": str(value) for name, value in environment.items()} | {"LD_PRELOAD": str(bench.shim)}
        first = subprocess.run(rescue, env=os.environ | {"XDG_STATE_HOME": str(bench.where / "state")} | words, capture_output=True, text=True, timeout=PATIENCE_S, check=False)
        assert plain(first.stderr), f"{how} at {at}: {first.stderr}"
        if first.returncode != 0:
            again = command("rescue", "--data", bench.data)
            # All was done but for the last word: then the journal is whole, and opens.
            assert again.code == 0 or "There is no journal" not in again.err, f"{how} at {at}: {again}"
        assert damaged in contents(bench.data).values(), f"{how} at {at}: the damaged original is gone"
        after = bench.run(AFTER)
        assert after.code == 0, f"{how} at {at}: {after.out}"
        shutil.rmtree(bench.where / "copy", ignore_errors=True)
        bodies = journal.verify(journal.read(bench.data, bench.where / "copy"), rescued=True)
        told = str([body["fact"] for body in bodies])
        assert all(name in told for name in ("Mara Lind", "Tomas Brandt", "Ruth Adair")), f"{how} at {at}: {told}"
