"""The record of a job of growing length with sixty photos beside reportlab: time, peak memory and size.

    cargo run --release --example long_job is run by this; then: tests/.venv/bin/python tests/bench/record.py [TIMES]

Prints the rows for docs/benchmarks.md. The binary is the one that tests/run builds, and its time is that of the whole process. reportlab is
given the same pictures and the same rows from the JSON, and makes neither tags nor PDF/A, embeds no journal and checks nothing.
"""

import json
import statistics
import subprocess
import sys
import tempfile
import time
from base64 import b64decode
from io import BytesIO
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))
sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "outside"))

from photos import photo
from reportlab.lib.pagesizes import A4
from reportlab.lib.styles import getSampleStyleSheet
from reportlab.platypus import Image, LongTable, Paragraph, SimpleDocTemplate
from support.desk import ROOT, binary
from support.peak import peak

PHOTOS = 60
# How often the work was left and proved again: 20 is a week of breaks and shifts (assumption).
ROUNDS = (2, 20, 200)
TITLE = "Replace the outgoing breaker of washer 4"


def played(folder: Path, rounds: int) -> Path:
    """A data folder with the job."""
    files = []
    for seed in range(PHOTOS):
        files.append(folder / f"{seed}.jpg")
        files[-1].write_bytes(photo(seed).jpeg)
    run = ["cargo", "run", "--quiet", "--release", "--locked", "-p", "stillbar-core", "--example", "long_job", "--"]
    subprocess.run([*run, folder / "data", str(rounds), *files], check=True, cwd=ROOT)
    return folder / "data"


def beside(file: dict, out: Path) -> float:
    """reportlab's seconds for the same pictures and rows."""
    start = time.perf_counter()
    style = getSampleStyleSheet()["BodyText"]
    story = []
    for picture in file["photos"]:
        image = Image(BytesIO(b64decode(picture["jpeg"])))
        image._restrictSize(230, 220)
        story.append(image)
    for rows in (file["claims"]["readings"], file["claims"]["time_line"]):
        cells = [[Paragraph(str(r["when"]["at"]), style), Paragraph(r.get("says") or r.get("reading"), style)] for r in rows]
        story.append(LongTable(cells))
    SimpleDocTemplate(str(out), pagesize=A4).build(story)
    return time.perf_counter() - start


def main() -> None:
    times = int(sys.argv[1]) if len(sys.argv) > 1 else 11
    for rounds in ROUNDS:
        measured(times, rounds)


def measured(times: int, rounds: int) -> None:
    """The rows of one length."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        data = played(folder, rounds)
        commands = {
            "`stillbar record -o .pdf`": ["record", TITLE, "-o", folder / "a.pdf", "--force", "--data", data],
            "`stillbar record -o .json`": ["record", TITLE, "-o", folder / "a.json", "--force", "--data", data],
            "`stillbar verify .pdf`": ["verify", folder / "a.pdf"],
        }
        for name, command in commands.items():
            done = [peak(binary(), *command) for _ in range(times)]
            assert all(d.code == 0 for d in done), done[0].said
            took = [1000 * d.seconds for d in done]
            print(f"| {name} | median {statistics.median(took):.0f} ms, slowest {max(took):.0f} ms | {max(d.mb for d in done):.0f} MB |")
        file = json.loads((folder / "a.json").read_bytes())
        took = [1000 * beside(file, folder / "b.pdf") for _ in range(times)]
        print(f"| reportlab, without starting | median {statistics.median(took):.0f} ms, slowest {max(took):.0f} ms | |")
        sizes = {name: (folder / name).stat().st_size / 1e6 for name in ("a.pdf", "a.json", "b.pdf")}
        print(len(file["entries"]), "entries,", len(file["photos"]), "photos,", {k: f"{v:.1f} MB" for k, v in sizes.items()})


if __name__ == "__main__":
    main()
