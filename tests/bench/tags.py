"""The reader of tags beside outside readers on generated photos: found, wrong, time and peak memory a photo.

    tests/.venv/bin/python tests/bench/tags.py [PHOTOS [FIRST_SEED]]

Prints the rows for docs/benchmarks.md. The binary is the one that tests/run builds. Its time is that of the whole process, that
of the others without the start of the interpreter; memory is the peak of the whole process, the interpreter too, and for the
others it is taken of every tenth photo.
"""

import json
import statistics
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
from support.peak import peak

OURS = "Stillbar"
MEMORY_OF_EVERY = 10


def measured(path: Path) -> tuple[set[str], float, float]:
    """What `stillbar tag read` finds, its seconds, and the most memory (MB) that its process held, decoding included."""
    done = peak(binary(), "tag", "read", "--json", path)
    assert done.code == 0, done.said
    [found] = json.loads(done.said)
    return {*found["tags"], *found["other"]}, done.seconds, done.mb


def grey(jpeg: bytes) -> np.ndarray:
    """What the outside readers are given."""
    return cv2.imdecode(np.frombuffer(jpeg, np.uint8), cv2.IMREAD_GRAYSCALE)


def main() -> None:
    """All photos, all readers."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 300
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    found = {name: 0 for name in (OURS, *READERS)}
    wrong = dict(found)
    took = {name: [] for name in found}
    memory = {name: [] for name in found}
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "photo.jpg"
        for seed in range(first, first + count):
            taken = photo(seed)
            path.write_bytes(taken.jpeg)
            texts, seconds, mb = measured(path)
            said = {OURS: texts}
            took[OURS].append(seconds)
            memory[OURS].append(mb)
            for name, read in READERS.items():
                began = time.perf_counter()
                said[name] = read(grey(taken.jpeg))
                took[name].append(time.perf_counter() - began)
                if seed % MEMORY_OF_EVERY == 0:
                    memory[name].append(peak(sys.executable, __file__, "--one", name, path).mb)
            for name, texts in said.items():
                found[name] += taken.text in texts
                wrong[name] += len(texts - {taken.text})
            missed = [name for name, texts in said.items() if taken.text not in texts]
            lied = [name for name, texts in said.items() if texts - {taken.text}]
            print(
                f"{seed}: {taken.module:.1f} px a module, missed by {', '.join(missed) or 'none'}, "
                f"wrong text by {', '.join(lied) or 'none'}, {seconds:.2f} s, {mb:.0f} MB",
                file=sys.stderr,
                flush=True,
            )
    print("| reader | found | wrong texts | median s a photo | slowest s | peak memory |\n|---|---|---|---|---|---|")
    for name in found:
        middle, slowest, most = statistics.median(took[name]), max(took[name]), max(memory[name], default=0)
        print(f"| {name} | {found[name]} of {count} | {wrong[name]} | {middle:.2f} | {slowest:.2f} | {most:.0f} MB |")


if __name__ == "__main__":
    if sys.argv[1:2] == ["--one"]:
        READERS[sys.argv[2]](grey(Path(sys.argv[3]).read_bytes()))
    else:
        main()
