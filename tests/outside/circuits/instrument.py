"""What is read at a board: by a meter in volts, or by an indicator in steps; and a probe on the wrong terminal."""

import math
from dataclasses import dataclass
from itertools import combinations

from .families import Board
from .network import Solved

STEPS = [12, 24, 50, 120, 230, 400, 690]


@dataclass
class Scene:
    """A case as a person would write it down, and the truth behind it."""

    family: str
    case: dict
    board: Board
    solved: Solved
    ohms: float
    misplaced: tuple[str, str] | None = None


def make(rng, family, *, steps: bool, misplaced: bool = False) -> Scene:
    """A random member of `family` with its readings; again until the fault shows at all, and a misplaced probe changes a reading."""
    for _ in range(400):
        board: Board = family(rng)
        solved = board.network.solve(board.names)
        impedance, ohms = _load(rng, board, steps)
        pairs = list(combinations(board.names, 2))
        true = {p: solved.read(*p, ohms) for p in pairs}
        shown = true.get(board.also.get("needs_pair"), max(true.values()))
        if shown < max(board.needs, 13.0 if steps and board.needs else 0.0):
            continue
        gain, threshold = rng.uniform(-0.01, 0.01), rng.uniform(0.82, 0.95)
        readings = [_reading(rng, p, v, steps, gain, threshold, impedance) for p, v in true.items()]
        if steps:
            _hidden_angle(board, true, threshold)
        wrong = None
        if misplaced:
            a, b = (int(x) for x in rng.choice(len(pairs), 2, replace=False))
            moved = dict(readings[b], pair=readings[a]["pair"])
            if _same(readings[a], moved, true[pairs[a]], true[pairs[b]]):
                continue
            readings[a], wrong = moved, pairs[a]
        if board.only_high and not steps and not misplaced and rng.random() < 0.4:
            readings += [_reading(rng, p, solved.read(*p, 5e3), steps, gain, threshold, "low") for p in pairs]
        return Scene(family.__name__, _case(rng, board, readings), board, solved, ohms, wrong)
    raise AssertionError(f"{family.__name__} never shows")


def _load(rng, board: Board, steps: bool) -> tuple[str, float]:
    low = float(math.exp(rng.uniform(math.log(3e3), math.log(60e3))))
    high = float(math.exp(rng.uniform(math.log(2e5), math.log(1e6)))) if steps else float(rng.choice([1e6, 1e7]))
    if board.only_high or rng.random() < 0.5:
        return ("high" if rng.random() < 0.7 else "unknown"), high
    return ("low" if rng.random() < 0.7 else "unknown"), low


def _reading(rng, pair, volts, steps, gain, threshold, impedance) -> dict:
    out = {"pair": list(pair), "impedance": impedance}
    if not steps:
        # 1 % and half a volt; the half volt only where there is something to read.
        noise = rng.uniform(-0.5, 0.5) if volts > 0.5 else 0.0
        return out | {"volts": round(max(0.0, volts * (1 + gain + rng.uniform(-0.004, 0.004)) + noise), 1)}
    return out | {"level": _step(volts, threshold)}


def _step(volts: float, threshold: float) -> int | str:
    lit = [s for s in STEPS if volts >= threshold * s]
    return lit[-1] if lit else "none"


def _hidden_angle(board: Board, true: dict, threshold: float) -> None:
    """A foreign angle that changes no step of the indicator cannot be told from 120 degrees."""
    live = board.also.get("foreign", [])
    usual = _step(board.volts * board.also.get("scale", 1.0) * 3**0.5, threshold)
    if live and all(_step(v, threshold) == usual for p, v in true.items() if set(p) <= set(live)):
        board.right |= {"two-lines-live"} if len(live) == 2 else {"not-isolated"}


def _same(old: dict, new: dict, true_old: float, true_new: float) -> bool:
    if "volts" in old:
        return abs(true_old - true_new) < max(25.0, 0.12 * max(true_old, true_new))
    # Neighbouring steps are one misread lamp apart, which nobody can tell from a supply at the edge of a step.
    place = [([*STEPS].index(r["level"]) if r["level"] != "none" else -1) for r in (old, new)]
    return abs(place[0] - place[1]) < 2


def _case(rng, board: Board, readings: list[dict]) -> dict:
    role = {"N": "neutral", "PE": "protective"}
    nominal = {"line_neutral": round(board.volts, 1), "line_line": board.line_line}
    return {
        "conductors": [{"name": n, "role": role.get(n, "line")} for n in board.names],
        "earthing": board.earthing,
        "nominal_volts": {k: nominal[k] for k in board.give},
        "poles_opened": board.poles,
        "dead_limit_volts": float(rng.choice([0.0, 3.0])),
        "readings": [readings[int(k)] for k in rng.permutation(len(readings))],
        "proved_before": True,
        "proved_after": True,
        "reference_proved": board.reference,
    }
