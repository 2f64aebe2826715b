"""Families of faults. Each makes a circuit, says what a person at the terminals knows, and which causes are a right answer.

Magnitudes alone cannot tell everything apart. Where two causes give the same readings, both are right answers, and docs/judge.md
says so.
"""

from dataclasses import dataclass, field

import numpy as np

from .network import EARTH, Network, phasor

STAR = [0.0, -120.0, 120.0]


@dataclass
class Board:
    """A circuit and what is known of it."""

    network: Network
    names: list[str]
    volts: float
    earthing: str
    poles: list[str]
    right: set[str]
    line_line: float | None = None
    give: tuple[str, ...] = ("line_neutral",)
    reference_good: bool = True
    reference: str = "known-line"
    only_high: bool = False
    needs: float = 0.0
    also: dict = field(default_factory=dict)

    @property
    def lines(self) -> list[str]:
        return [n for n in self.names if n.startswith("L")]


def _board(rng, right, *, n_lines=3, neutral=True, earthing=None, opened=True, neutral_opened=None, volts=None) -> Board:
    """A source with an earthed star point (unless IT), a board behind an isolator, a cable's capacitances."""
    volts = volts or float(rng.choice([230.0, 230.0, 230.0, 120.0, 277.0]))
    earthing = earthing or str(rng.choice(["TN-S", "TN-C-S", "TT"]))
    net = Network(60.0 if volts in (120.0, 277.0) else 50.0)
    lines = ["L1", "L2", "L3"][:n_lines] if n_lines > 1 else ["L"]
    names = lines + (["N"] if neutral else []) + ["PE"]
    if neutral_opened is None:
        neutral_opened = neutral and bool(rng.random() < 0.5)
    scale = rng.uniform(0.95, 1.05)
    for k in range(3):
        net.v(f"S{k + 1}", "SN", phasor(volts * scale * rng.uniform(0.99, 1.01), STAR[k]), rng.uniform(0.05, 0.3))
    if earthing == "IT":
        for k in range(3):
            net.c(f"S{k + 1}", EARTH, rng.uniform(5e-9, 300e-9))
        net.r("SN", EARTH, rng.uniform(2e6, 2e7))
        net.r("PE", EARTH, rng.uniform(1, 20))
    elif earthing == "TT":
        net.r("SN", EARTH, rng.uniform(0.5, 4))
        net.r("PE", EARTH, rng.uniform(5, 60))
    else:
        net.r("SN", EARTH, rng.uniform(0.2, 2))
        net.r("PE", "SN", rng.uniform(0.05, 0.4))
    board = Board(net, names, volts, earthing, lines + (["N"] if neutral_opened and neutral else []), set(right))
    board.also["scale"] = scale
    _cable(rng, net, names)
    if opened:
        for k, line in enumerate(lines):
            net.c(f"S{k + 1}", line, rng.uniform(2e-12, 10e-12))
    if neutral and not (neutral_opened and opened):
        net.r("N", "SN", rng.uniform(0.05, 0.4))
    return board


def _cable(rng, net: Network, names: list[str]) -> None:
    """Capacitance and insulation between cores, 5 to 60 m."""
    length = rng.uniform(5, 60)
    for k, a in enumerate(names):
        for b in names[k + 1 :]:
            net.c(a, b, length * rng.uniform(20e-12, 80e-12))
            net.r(a, b, rng.uniform(5e7, 1e9))


def _close(rng, board: Board, which) -> None:
    for line in which:
        k = 0 if line == "L" else int(line[1]) - 1
        board.network.r(f"S{k + 1}", line, rng.uniform(0.01, 0.1))


def _loads(rng, board: Board, chance: float, low=15.0, high=600.0) -> None:
    """Loads from line to neutral, and sometimes a winding between lines."""
    for line in board.lines:
        if "N" in board.names and rng.random() < chance:
            board.network.z(line, "N", float(np.exp(rng.uniform(np.log(low), np.log(high)))), rng.uniform(0.8, 1.0))


def _delta(rng, board: Board) -> None:
    lines = board.lines
    size = rng.uniform(8, 60)
    for k, line in enumerate(lines):
        board.network.z(line, lines[(k + 1) % len(lines)], size * rng.uniform(0.97, 1.03), rng.uniform(0.3, 0.9))
        if len(lines) == 2:
            break


def healthy(rng) -> Board:
    # A remark on a neutral that shows no continuity to earth is no wrong cause: these instruments never show any.
    b = _board(rng, {"none", "no-voltage", "neutral-drop", "neutral-earth-unexpected"}, n_lines=int(rng.choice([1, 3])), neutral=bool(rng.random() < 0.8))
    if len(b.names) == 2:
        return healthy(rng)
    # Without any load a floating core can be coupled to: that is another family.
    for line in b.lines:
        b.network.z(line, "N" if "N" in b.names else "PE", rng.uniform(20, 2000))
    if "N" in b.poles:
        b.network.r("N", "PE", rng.uniform(1e3, 1e5))
    elif b.earthing == "TT" and "N" in b.names:
        # In TT a proof needs the neutral opened.
        b.poles.append("N")
        b.network.resistors = [x for x in b.network.resistors if set(x[:2]) != {"N", "SN"}]
        b.network.r("N", "PE", 1e4)
    return b


def neutral_drop(rng) -> Board:
    b = _board(rng, {"neutral-drop"}, neutral_opened=True, earthing=str(rng.choice(["TN-S", "TN-C-S"])), volts=230.0)
    b.poles = list(b.lines)
    ohms = rng.uniform(0.08, 0.25)
    b.network.r("N", "SN", ohms)
    b.network.z("S1", "N", b.volts / (rng.uniform(3, 9) / ohms))
    _loads(rng, b, 0.6)
    b.needs = 2.5
    return b


def not_isolated(rng) -> Board:
    single = rng.random() < 0.25
    b = _board(rng, {"not-isolated"}, n_lines=1 if single else 3, neutral=single or bool(rng.random() < 0.75), opened=False)
    _close(rng, b, b.lines)
    _loads(rng, b, 0.5)
    return b


def _delta_source(rng, right, volts: float, tap: str | None) -> Board:
    """A 240 V class delta: sides of `volts`; earthed at the middle of L3-L1 ("middle") or at corner L1."""
    net = Network(60.0)
    scale = rng.uniform(0.96, 1.04)
    side = volts * scale
    if tap == "middle":
        corner = {"S1": phasor(side / 2, 0), "S3": phasor(side / 2, 180), "S2": phasor(side * 3**0.5 / 2, 90)}
        names = ["L1", "L2", "L3", "N", "PE"]
    else:
        corner = {"S1": 0j, "S2": phasor(side, 60), "S3": phasor(side, 120)}
        names = ["L1", "L2", "L3", "PE"]
    for s, emf in corner.items():
        net.v(s, "SN", emf * rng.uniform(0.995, 1.005), rng.uniform(0.02, 0.1))
    net.r("SN", EARTH, 1.0)
    net.r("PE", "SN", rng.uniform(0.05, 0.4))
    if "N" in names:
        net.r("N", "SN", rng.uniform(0.05, 0.3))
    _cable(rng, net, names)
    b = Board(net, names, volts / 2 if tap == "middle" else volts / 3**0.5, "TN-S", ["L1", "L2", "L3"], set(right))
    b.line_line = volts
    b.give = ("line_neutral", "line_line") if tap == "middle" else ("line_line",)
    return b


def high_leg(rng) -> Board:
    b = _delta_source(rng, {"not-isolated"}, 240.0, "middle")
    _close(rng, b, b.lines)
    return b


def high_leg_one_line(rng) -> Board:
    b = _delta_source(rng, {"one-line-live"}, 240.0, "middle")
    _close(rng, b, [str(rng.choice(b.lines))])
    for line in b.lines:
        b.network.z(line, "N", rng.uniform(20, 300))
    return b


def corner_grounded(rng) -> Board:
    b = _delta_source(rng, {"not-isolated"}, float(rng.choice([240.0, 480.0])), None)
    _close(rng, b, b.lines)
    return b


def one_line_live(rng) -> Board:
    b = _board(rng, {"one-line-live"}, neutral=bool(rng.random() < 0.8), neutral_opened=False)
    live = str(rng.choice(b.lines))
    _close(rng, b, [live])
    _loads(rng, b, float(rng.choice([0.0, 1.0])))
    return b


def one_line_live_four_poles(rng) -> Board:
    """The circuits are shed and the neutral is opened: everything but one line hangs free."""
    b = _board(rng, {"one-line-live"}, neutral_opened=True)
    _close(rng, b, [str(rng.choice(b.lines))])
    return b


def two_lines_live(rng) -> Board:
    b = _board(rng, {"two-lines-live"}, neutral=bool(rng.random() < 0.7), neutral_opened=False)
    dead = str(rng.choice(b.lines))
    _close(rng, b, [x for x in b.lines if x != dead])
    if rng.random() < 0.5:
        _delta(rng, b)
    else:
        b.network.z(dead, "N" if "N" in b.names else "PE", rng.uniform(20, 400))
    return b


def backfeed(rng) -> Board:
    b = _board(rng, {"single-phase-backfeed"}, neutral=bool(rng.random() < 0.8), neutral_opened=False)
    _close(rng, b, [str(rng.choice(b.lines))])
    _delta(rng, b)
    return b


def open_neutral(rng) -> Board:
    b = _board(rng, {"open-neutral"}, neutral_opened=True, opened=False)
    b.network.resistors = [x for x in b.network.resistors if set(x[:2]) != {"N", "SN"}]
    b.poles = b.lines + (["N"] if rng.random() < 0.5 else [])
    _close(rng, b, b.lines)
    for line in b.lines:
        b.network.z(line, "N", float(np.exp(rng.uniform(np.log(10), np.log(200)))), rng.uniform(0.9, 1.0))
    b.needs = 0.12 * b.volts
    b.also["needs_pair"] = ("N", "PE")
    return b


def borrowed_neutral(rng) -> Board:
    single = rng.random() < 0.3
    # One line at the neutral's potential: a broken neutral under a live line reads the same.
    right = {"borrowed-neutral"} | ({"open-neutral"} if single else set())
    b = _board(rng, right, n_lines=1 if single else 3, neutral_opened=True)
    b.network.z(f"S{rng.integers(1, 4)}", "N", rng.uniform(20, 500), rng.uniform(0.85, 1.0))
    if rng.random() < 0.7:
        _loads(rng, b, 1.0)
    else:
        for line in b.lines:
            b.network.r(line, "PE", rng.uniform(1e3, 1e4))
    return b


def another_phase(rng) -> Board:
    b = _board(rng, {"another-source"}, neutral_opened=False, neutral=bool(rng.random() < 0.8))
    one, two, third = rng.permutation(b.lines)
    _close(rng, b, [one])
    k = int(one[1]) - 1
    angle = float(rng.choice([rng.uniform(20, 95), rng.uniform(150, 210)]))
    b.network.v(two, "SN", phasor(b.volts * rng.uniform(0.95, 1.05), STAR[k] + angle), rng.uniform(0.1, 1.0))
    b.also["foreign"] = [one, two]
    if rng.random() < 0.4:
        _close(rng, b, [third])
        b.also["foreign"] = [one, two, third]
        # Both angles from the pair that belongs together must be foreign.
        other = (STAR[int(third[1]) - 1] - STAR[k]) % 360
        if min(abs((angle - other) % 360 - x) for x in (0, 120, 240, 360)) < 20:
            return another_phase(rng)
    else:
        b.network.z(third, "N" if "N" in b.names else "PE", rng.uniform(20, 300))
    return b


def floating(rng) -> Board:
    b = _board(rng, {"floating-supply"}, earthing="IT", opened=False, neutral=bool(rng.random() < 0.5), volts=230.0)
    _close(rng, b, b.lines)
    if rng.random() < 0.4:
        b.network.r(str(rng.choice(b.lines)), "PE", float(np.exp(rng.uniform(np.log(10), np.log(1e4)))))
    return b


def broken_reference(rng) -> Board:
    kind = int(rng.integers(0, 3))
    b = _board(rng, {"broken-reference"}, earthing=str(rng.choice(["TN-S", "TN-C-S"])), neutral_opened=False, opened=kind > 0)
    b.network.resistors = [x for x in b.network.resistors if x[:2] != ("PE", "SN")]
    b.reference_good, b.reference = False, str(rng.choice(["no", "failed"]))
    if kind == 0:
        _close(rng, b, b.lines)
        # Filters and cable hold the broken conductor somewhere between the others.
        for line in b.lines:
            b.network.c(line, "PE", rng.uniform(1e-9, 50e-9))
    elif kind == 1:
        for line in b.lines:
            b.network.z(line, "N", rng.uniform(20, 300))
        b.network.r("S1", "PE", rng.uniform(1, 200))
    else:
        live = str(rng.choice(b.lines))
        _close(rng, b, [live])
        b.network.r(live, "PE", rng.uniform(1, 50))
        for line in b.lines:
            b.network.z(line, "N", rng.uniform(20, 300))
    return b


def induced(rng) -> Board:
    b = _board(rng, {"induced-voltage"}, neutral=bool(rng.random() < 0.7), volts=230.0)
    floating_cores = b.lines + (["N"] if "N" in b.poles else [])
    count = int(rng.integers(1, 4))
    for core in floating_cores:
        for k in range(count):
            b.network.c(f"S{k + 1}", core, float(np.exp(rng.uniform(np.log(0.05e-9), np.log(3e-9)))))
    b.only_high = True
    b.needs = 13.0
    return b


FAMILIES = [
    healthy, neutral_drop, not_isolated, high_leg, high_leg_one_line, corner_grounded, one_line_live, one_line_live_four_poles, two_lines_live, backfeed,
    open_neutral, borrowed_neutral, another_phase, floating, broken_reference, induced,
]
