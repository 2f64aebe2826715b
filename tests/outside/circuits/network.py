"""Linear AC circuits as nodal admittance matrices (complex phasors, one frequency)."""

import cmath
import math
from dataclasses import dataclass, field

import numpy as np

EARTH = "0"


def phasor(volts: float, degrees: float = 0.0) -> complex:
    """A voltage as a complex number."""
    return volts * cmath.exp(1j * math.radians(degrees))


@dataclass
class Network:
    """Elements between named nodes; `EARTH` is the reference."""

    hertz: float = 50.0
    resistors: list[tuple[str, str, float]] = field(default_factory=list)
    inductors: list[tuple[str, str, float]] = field(default_factory=list)
    capacitors: list[tuple[str, str, float]] = field(default_factory=list)
    # From, to, electromotive force towards the first, inner resistance.
    sources: list[tuple[str, str, complex, float]] = field(default_factory=list)
    parts: int = 0

    def r(self, a: str, b: str, ohms: float) -> None:
        self.resistors.append((a, b, ohms))

    def c(self, a: str, b: str, farads: float) -> None:
        self.capacitors.append((a, b, farads))

    def z(self, a: str, b: str, ohms: float, power_factor: float = 1.0) -> None:
        """A load: resistance and inductance in series."""
        if power_factor > 0.999:
            return self.r(a, b, ohms)
        self.parts += 1
        middle = f"z{self.parts}"
        self.r(a, middle, ohms * power_factor)
        self.inductors.append((middle, b, ohms * math.sqrt(1 - power_factor**2) / (2 * math.pi * self.hertz)))

    def v(self, a: str, b: str, volts: complex, ohms: float) -> None:
        self.sources.append((a, b, volts, ohms))

    def solve(self, names: list[str]) -> "Solved":
        """Open-circuit potentials of `names` and the impedance matrix between them."""
        nodes = sorted(
            {n for a, b, *_ in self.resistors + self.inductors + self.capacitors + self.sources for n in (a, b)} - {EARTH}
        )
        at = {n: k for k, n in enumerate(nodes)}
        # A conductance far below any insulation keeps a node that hangs on capacitances only from being singular.
        y = np.eye(len(nodes), dtype=complex) * 1e-13
        i = np.zeros(len(nodes), dtype=complex)
        omega = 2 * math.pi * self.hertz
        branches = [(a, b, 1 / v) for a, b, v in self.resistors]
        branches += [(a, b, 1 / (1j * omega * v)) for a, b, v in self.inductors]
        branches += [(a, b, 1j * omega * v) for a, b, v in self.capacitors]
        branches += [(a, b, 1 / ohms) for a, b, _, ohms in self.sources]
        for a, b, admittance in branches:
            for n in (a, b):
                if n != EARTH:
                    y[at[n], at[n]] += admittance
            if a != EARTH and b != EARTH:
                y[at[a], at[b]] -= admittance
                y[at[b], at[a]] -= admittance
        for a, b, volts, ohms in self.sources:
            if a != EARTH:
                i[at[a]] += volts / ohms
            if b != EARTH:
                i[at[b]] -= volts / ohms
        z = np.linalg.inv(y)
        pick = [at[n] for n in names]
        return Solved({n: k for k, n in enumerate(names)}, (z @ i)[pick], z[np.ix_(pick, pick)])


@dataclass
class Solved:
    """What a network does at the conductors that can be touched."""

    at: dict[str, int]
    volts: np.ndarray
    z: np.ndarray

    def read(self, a: str, b: str, ohms: float = math.inf) -> float:
        """What an instrument of `ohms` between two conductors reads: Thévenin, exact."""
        i, j = self.at[a], self.at[b]
        open_circuit = self.volts[i] - self.volts[j]
        if math.isinf(ohms):
            return abs(open_circuit)
        inner = self.z[i, i] + self.z[j, j] - self.z[i, j] - self.z[j, i]
        return abs(open_circuit * ohms / (ohms + inner))

    def to_earth(self, a: str, ohms: float = math.inf) -> float:
        """What it reads between a conductor and true earth."""
        i = self.at[a]
        return abs(self.volts[i] * (1 if math.isinf(ohms) else ohms / (ohms + self.z[i, i])))
