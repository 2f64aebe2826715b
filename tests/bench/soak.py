#!/usr/bin/env python3
"""A week's work in fast time, 40 jobs, in one process with an office beside it: prints the row for docs/benchmarks.md.

    tests/.venv/bin/python tests/bench/soak.py [JOBS]

`tests/run build` must have run once.
"""

import json
import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from support.desk import binary

jobs = sys.argv[1] if len(sys.argv) > 1 else "40"
done = subprocess.run([binary().parent / "examples" / "soak", jobs], capture_output=True, text=True, check=True)
rows = [json.loads(line) for line in done.stdout.splitlines()]
print("| after job | entries | resident memory | open files | threads | the job took |")
print("|---|---|---|---|---|---|")
for row in [r for n, r in enumerate(rows) if n in (0, 4, 9, 19, 29, len(rows) - 1)]:
    print(f"| {row['job'] + 1} | {row['entries']} | {row['resident_kib'] / 1024:.1f} MB | {row['files']} | {row['threads']} | {row['ms']} ms |")
