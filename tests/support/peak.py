"""Time and peak memory of one command.

The kernel's count for a child begins with the memory of the process that forked it, so a bare interpreter stands between.
"""

import json
import subprocess
import sys
from dataclasses import dataclass

_BETWEEN = """
import json, os, sys, time
began = time.monotonic()
child = os.posix_spawn(sys.argv[1], sys.argv[1:], os.environ, file_actions=[(os.POSIX_SPAWN_DUP2, 2, 1)])
_, status, used = os.wait4(child, 0)
print(json.dumps([os.waitstatus_to_exitcode(status), time.monotonic() - began, used.ru_maxrss / 1024]))
"""


@dataclass(frozen=True)
class Peak:
    """A command that ended by itself."""

    code: int
    seconds: float
    mb: float
    said: str


def peak(*words: object) -> Peak:
    """Runs a program, given by its path, to its end. What it prints comes back as `said`."""
    between = [sys.executable, "-I", "-S", "-c", _BETWEEN, *map(str, words)]
    done = subprocess.run(between, capture_output=True, text=True, timeout=120, check=True)
    code, seconds, mb = json.loads(done.stdout)
    return Peak(code, seconds, mb, done.stderr)
