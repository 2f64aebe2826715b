"""The reader of tags beside outside readers on generated photos: found, wrong, time and peak memory a photo.

    tests/.venv/bin/python tests/bench/tags.py [PHOTOS [FIRST_SEED]]

Prints the rows for docs/benchmarks.md. The binary is the one that tests/run builds.
"""

import json
import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))
sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "outside"))

import cv2
import numpy as np
from photos import photo
from photos.readers import READERS
from support.desk import binary

OURS = "Stillbar"


def measured(path: Path) -> tuple[set[str], float, int]:
    """What `stillbar tag read` finds, its seconds, and the most memory (KiB) that its process held, decoding included."""
    began = time.perf_counter()
    process = subprocess.Popen([binary(), "tag", "read", "--json", path], stdout=subprocess.PIPE)
    out = process.stdout.read()
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    took = time.perf_counter() - began
    assert process.returncode == 0, out
    [found] = json.loads(out)
    return {*found["tags"], *found["other"]}, took, usage.ru_maxrss


def main() -> None:
    """All photos, all readers."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 300
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    found = {name: 0 for name in (OURS, *READERS)}
    wrong = dict(found)
    took = {name: [] for name in found}
    memory = 0
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "photo.jpg"
        for seed in range(first, first + count):
            taken = photo(seed)
            path.write_bytes(taken.jpeg)
            texts, seconds, kib = measured(path)
            said = {OURS: texts}
            took[OURS].append(seconds)
            memory = max(memory, kib)
            for name, read in READERS.items():
                began = time.perf_counter()
                grey = cv2.imdecode(np.frombuffer(taken.jpeg, np.uint8), cv2.IMREAD_GRAYSCALE)
                said[name] = read(grey)
                took[name].append(time.perf_counter() - began)
            for name, texts in said.items():
                found[name] += taken.text in texts
                wrong[name] += len(texts - {taken.text})
            missed = [name for name, texts in said.items() if taken.text not in texts]
            lied = [name for name, texts in said.items() if texts - {taken.text}]
            print(
                f"{seed}: {taken.module:.1f} px a module, missed by {', '.join(missed) or 'none'}, "
                f"wrong text by {', '.join(lied) or 'none'}, {seconds:.2f} s",
                file=sys.stderr,
                flush=True,
            )
    print("| reader | found | wrong texts | median s a photo | slowest s |\n|---|---|---|---|---|")
    for name in found:
        middle, most = statistics.median(took[name]), max(took[name])
        print(f"| {name} | {found[name]} of {count} | {wrong[name]} | {middle:.2f} | {most:.2f} |")
    print(f"\nPeak memory of the process of {OURS}, decoding included: {memory // 1024} MiB.")


if __name__ == "__main__":
    main()
