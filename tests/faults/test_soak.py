"""Work that goes on for long: what the process holds stays the same. `tests/bench/soak.py` is the same for a whole week."""

import json
import subprocess

from support.desk import PATIENCE_S, binary

JOBS = 8


def test_nothing_grows_from_job_to_job():
    """Memory, files and threads after each of eight jobs, with photos, exchanges, restarts, in and out of the background."""
    soak = binary().parent / "examples" / "soak"
    assert soak.is_file(), f"{soak} is not there; tests/run builds it"
    done = subprocess.run([soak, str(JOBS)], capture_output=True, text=True, timeout=8 * PATIENCE_S, check=False)
    assert done.returncode == 0, done.stderr
    jobs = [json.loads(line) for line in done.stdout.splitlines()]
    assert len(jobs) == JOBS and jobs[-1]["entries"] > JOBS * 50
    # The first job brings the office's connections and the allocator's pools.
    early, late = jobs[2:4], jobs[-2:]
    most = lambda rows, what: max(row[what] for row in rows)  # noqa: E731
    assert most(late, "files") <= most(early, "files") + 2, jobs
    assert most(late, "threads") <= most(early, "threads") + 2, jobs
    # Two MiB a job would be 80 in a week.
    assert most(late, "resident_kib") - most(early, "resident_kib") < 2 * 1024 * JOBS, jobs
