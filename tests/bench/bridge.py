"""From an act to the next screen of 200 blocks: in Rust, and through the Kotlin bindings on a JVM, on the same journal.

    cargo build --release && tests/.venv/bin/python tests/bench/bridge.py

Prints the rows for docs/benchmarks.md.
"""

import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def said(*words: str, cwd: Path = ROOT) -> str:
    """What a command prints."""
    done = subprocess.run(words, cwd=cwd, capture_output=True, text=True, env=os.environ)
    if done.returncode != 0:
        sys.exit(done.stdout[-3000:] + done.stderr[-3000:])
    return done.stdout


def main() -> None:
    """Both, one after the other."""
    with tempfile.TemporaryDirectory() as folder:
        example = ("cargo", "run", "--release", "--quiet", "-p", "stillbar-core", "--example", "screen_speed", "--", f"{folder}/one")
        rust = json.loads(said(*example))
        said("mvn", "-q", "-B", "test", "-Dtest=BridgeBench", f"-Dstillbar.bench={folder}/one", cwd=ROOT / "android")
        kotlin = json.loads(Path(f"{folder}/one/kotlin.json").read_text())
    assert rust["route"] == kotlin["route"] and rust["blocks"] == kotlin["blocks"] >= 200
    for name, took in (("Rust", rust), ("Kotlin through the bindings", kotlin)):
        print(f"| {name} | {took['blocks']} blocks | median {took['median_us'] / 1000:.2f} ms | 95 % within {took['p95_us'] / 1000:.2f} ms |")


if __name__ == "__main__":
    main()
