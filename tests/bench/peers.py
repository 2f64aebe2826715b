#!/usr/bin/env python3
"""A merge of 1,000 to 100,000 entries into an empty phone, beside Automerge, Loro and Yrs that hold the same facts: time, memory, bytes.

    tests/.venv/bin/python tests/bench/peers.py [ENTRIES ...]

Builds tests/bench/peers, a crate of its own; prints the rows for docs/benchmarks.md. Each merge is a process of its own; medians of five.
"""

import json
import statistics
import subprocess
import sys
import tempfile
import tomllib
from pathlib import Path

CRATE = Path(__file__).resolve().parent / "peers"
KINDS = ("stillbar", "automerge", "loro", "yrs")
TIMES = 5

subprocess.run(["cargo", "build", "--release", "--locked", "--quiet"], cwd=CRATE, check=True)
versions = {p["name"]: p["version"] for p in tomllib.loads((CRATE / "Cargo.lock").read_text())["package"]}
print("| entries | with | time | beside ours | peak memory | bytes |")
print("|---|---|---|---|---|---|")
for size in sys.argv[1:] or ["1000", "10000", "100000"]:
    ours = None
    for kind in KINDS:
        with tempfile.TemporaryDirectory() as folder:
            call = lambda what: subprocess.run(  # noqa: E731
                [CRATE / "target/release/stillbar-peers", kind, size, what, f"{folder}/sent"], check=True, capture_output=True, text=True
            ).stdout
            call("make")
            runs = [json.loads(call("merge")) for _ in range(TIMES)]
        took = statistics.median(run["ms"] for run in runs)
        ours = ours or took
        name = "Stillbar, signatures checked, on disk" if kind == "stillbar" else f"{kind.capitalize()} {versions[kind]}, in memory"
        peak = statistics.median(run["peak_mib"] for run in runs)
        print(f"| {runs[0]['entries']} | {name} | {took:.0f} ms | {took / ours:.2f} | {peak:.0f} MiB | {runs[0]['bytes']} |", flush=True)
