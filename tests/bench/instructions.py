#!/usr/bin/env python3
"""Counts the instructions of the hot paths with callgrind, so that a regression shows on a machine that is busy.

    tests/.venv/bin/python tests/bench/instructions.py           beside the counts that are kept, and fails at 5 % more
    tests/.venv/bin/python tests/bench/instructions.py --keep    keeps these

Counts depend on the compiler: keep them anew with a new one, in a commit of its own. Needs valgrind (https://valgrind.org/docs/manual/cl-manual.html).
`cargo build --release --locked -p stillbar-core --example hot` first.
"""

import json
import os
import re
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
KEPT = Path(__file__).with_name("instructions.json")
HOT = Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target")) / "release" / "examples" / "hot"
PATHS = {
    "open an entry": 100,
    "seal an entry": 100,
    "fold a job": 50,
    "plan 5 conductors": 50,
    "keep an entry": 20,
    "go to a job and draw it": 20,
    "read a frame": 5,
    "look at a photo": 3,
}
MOST = 1.05


def count(path: str, times: int) -> int:
    """Instructions of the whole process."""
    with tempfile.TemporaryDirectory() as folder:
        words = ["valgrind", "--tool=callgrind", f"--callgrind-out-file={folder}/out", HOT, path, str(times)]
        done = subprocess.run(words, capture_output=True, text=True, check=True)
        return int(re.search(r"Collected : (\d+)", done.stderr)[1])


found = {path: (count(path, times) - count(path, 0)) // times for path, times in PATHS.items()}
kept = json.loads(KEPT.read_text()) if KEPT.exists() else {}
print("| path | instructions | beside the kept count |\n|---|---|---|")
for path, instructions in found.items():
    print(f"| {path} | {instructions:,} | {instructions / kept[path]:.3f} |" if path in kept else f"| {path} | {instructions:,} | |")
if "--keep" in sys.argv:
    KEPT.write_text(json.dumps(found, indent=1) + "\n")
elif worse := [path for path in found if found[path] > MOST * kept.get(path, found[path])]:
    sys.exit(f"more than {MOST - 1:.0%} above the kept count: {', '.join(worse)}")
