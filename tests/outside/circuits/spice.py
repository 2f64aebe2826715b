"""The same networks in ngspice, with the instrument wired in as a resistor."""

import cmath
import math
import subprocess
import tempfile
from pathlib import Path

from .network import EARTH, Network


def read(network: Network, a: str, b: str, ohms: float) -> float:
    """What ngspice says an instrument of `ohms` between `a` and `b` reads."""
    node = {EARTH: "0"}

    def n(name: str) -> str:
        return node.setdefault(name, f"n{len(node)}")

    lines = ["stillbar check"]
    for k, (x, y, v) in enumerate(network.resistors):
        lines.append(f"R{k} {n(x)} {n(y)} {v:.12g}")
    for k, (x, y, v) in enumerate(network.inductors):
        lines.append(f"L{k} {n(x)} {n(y)} {v:.12g}")
    for k, (x, y, v) in enumerate(network.capacitors):
        lines.append(f"C{k} {n(x)} {n(y)} {v:.12g}")
    for k, (x, y, v, inner) in enumerate(network.sources):
        angle = math.degrees(cmath.phase(v))
        lines.append(f"V{k} s{k} {n(y)} DC 0 AC {abs(v):.12g} {angle:.12g}")
        lines.append(f"RS{k} {n(x)} s{k} {inner:.12g}")
    lines.append(f"RM {n(a)} {n(b)} {ohms:.12g}")
    for name in [x for x in node.values() if x != "0"]:
        # The nodal analysis has the same conductance; without it ngspice has no operating point.
        lines.append(f"RG{name} {name} 0 1e13")
    difference = f"v({n(a)})" if n(b) == "0" else f"v({n(a)},{n(b)})"
    lines += [
        ".options noacct",
        ".control",
        "set numdgt=10",
        f"ac lin 1 {network.hertz} {network.hertz}",
        f"print mag({difference})",
        "quit",
        ".endc",
        ".end",
    ]
    with tempfile.TemporaryDirectory() as folder:
        deck = Path(folder) / "deck.cir"
        deck.write_text("\n".join(lines) + "\n")
        done = subprocess.run(["ngspice", "-b", deck], capture_output=True, text=True, timeout=60, check=False)
    for line in done.stdout.splitlines():
        if line.startswith("mag(") and "=" in line:
            return float(line.split("=")[1])
    raise AssertionError(f"ngspice printed no magnitude:\n{done.stdout}\n{done.stderr}")
