"""`stillbar judge` on circuits with injected faults, solved by nodal analysis (numpy) and, for a sample, by ngspice.

The limits asserted here are promises; what was measured when this was written is in docs/judge.md.
"""

import json
from collections import Counter, defaultdict

import numpy as np
import pytest

from circuits import families, instrument, spice
from circuits.network import EARTH, Network, phasor
from support.desk import ROOT, command

SCHEMA = json.loads((ROOT / "docs" / "schemas" / "judge.schema.json").read_text(encoding="utf-8"))["$defs"]["answer"]

# Each family in each mode; 15 families make 600 circuits in volts, and 14 make 560 in steps.
EACH = 40

# A fault that a probe on the wrong terminal is put on top of. Not healthy boards (nothing changes), and not voltages that depend on
# the instrument anyway.
UNDER = [f for f in families.FAMILIES if f.__name__ not in ("healthy", "neutral_drop", "induced")]


def judged(case: dict) -> dict:
    """The command's answer to a case that is piped in, held against the schema's words."""
    done = command("judge", "-", "--json", piped=json.dumps(case))
    assert (done.code, done.err) == (0, ""), done.err
    answer = json.loads(done.out)
    assert set(answer) == set(SCHEMA["required"])
    assert answer["verdict"] in SCHEMA["properties"]["verdict"]["enum"]
    causes = SCHEMA["properties"]["diagnoses"]["items"]["properties"]["cause"]["enum"]
    for diagnosis in answer["diagnoses"]:
        assert diagnosis["cause"] in causes
        assert 0 <= diagnosis["fit"] <= 1 and diagnosis["explains"] and diagnosis["next"]
    return answer


def scenes(seed: int, which: list, *, steps: bool, misplaced: bool = False) -> list[instrument.Scene]:
    """`EACH` of every family, the same ones at every run."""
    rng = np.random.default_rng(seed)
    # A few volts of drop in a neutral light no lamp of an indicator.
    which = [f for f in which if not (steps and f is families.neutral_drop)]
    return [instrument.make(rng, f, steps=steps, misplaced=misplaced) for f in which for _ in range(EACH)]


def above_limit(scene: instrument.Scene, *, steps: bool) -> bool:
    """Whether any conductor is above the limit to true earth, with the instrument on it and its error allowed for."""
    limit = scene.case["dead_limit_volts"]
    limit = float(instrument.STEPS[0]) if steps else 1.02 * limit + 0.55
    return any(scene.solved.to_earth(name, scene.ohms) > limit for name in scene.board.names)


# --- the circuits themselves -----------------------------------------------------------------------------------------------------


def _divider(ohms: float) -> tuple[Network, str, str, float]:
    net = Network()
    net.v("L", EARTH, phasor(230), 1e-3)
    net.c("L", "core", 1.44e-9)
    net.c("core", EARTH, 1.9525e-9)
    return net, "core", EARTH, ohms


def _millman(a: str, b: str) -> tuple[Network, str, str, float]:
    net = Network()
    for line, angle, ohms in (("L1", 0, 10), ("L2", -120, 20), ("L3", 120, 40)):
        net.v(line, EARTH, phasor(230, angle), 1e-6)
        net.r(line, "N", ohms)
    return net, a, b, 1e9


def _coupled(live: list[float], earthed: bool) -> tuple[Network, str, str, float]:
    net = Network()
    for k, angle in enumerate(live):
        net.v(f"L{k}", EARTH, phasor(230, angle), 1e-3)
        net.c(f"L{k}", "core", 1e-9)
    if earthed:
        net.c("core", EARTH, 1e-9)
    return net, "core", EARTH, 1e12


# Partial capacitances of core A of a published power and signal cable in F/m (QuickField, "Signal cable", quickfield.com/advanced/
# signal_cable.htm): to earth, B, C, 0, and the four signal cores. 660 V, 50 Hz, 100 m; A dead, B and C live, the rest earthed.
CABLE = {"B": 5.76e-11, "C": 2.77e-12, EARTH: 2.06e-11 + 5.63e-11 + 2.31e-14 + 2.15e-14 + 7.43e-15 + 8.01e-15}


def _cable(ohms: float) -> tuple[Network, str, str, float]:
    net = Network()
    net.v("B", EARTH, phasor(660 / 3**0.5, -120), 1e-3)
    net.v("C", EARTH, phasor(660 / 3**0.5, 120), 1e-3)
    for other, farads in CABLE.items():
        net.c("A", other, 100 * farads)
    return net, "A", EARTH, ohms


FIGURES = [
    (_millman("N", EARTH), "86.93"),
    (_millman("L1", "N"), "150.57"),
    (_millman("L2", "N"), "260.80"),
    (_millman("L3", "N"), "301.14"),
    *[(_divider(r), v) for r, v in ((1e13, "97.63"), (10e6, "97.20"), (1e6, "71.20"), (400e3, "38.29"), (100e3, "10.35"), (3e3, "0.31"))],
    (_coupled([0, -120, 120], False), "0.0"),
    (_coupled([0, -120], True), "76.7"),
    (_coupled([0, -120], False), "115.0"),
    *[(_cable(r), v) for r, v in ((1e13, "156.1"), (1e6, "152.1"), (100e3, "61.9"), (3e3, "2.02"))],
]


@pytest.mark.parametrize(("circuit", "volts"), FIGURES, ids=range(len(FIGURES)))
def test_published_and_computed_figures(circuit, volts: str):
    """Millman's theorem, the capacitive divider, the published cable: numpy and ngspice both give them."""
    network, a, b, ohms = circuit
    names = [n for n in (a, b) if n != EARTH]
    solved = network.solve(names)
    ours = solved.to_earth(a, ohms) if b == EARTH else solved.read(a, b, ohms)
    # As many digits as the figure has; its last one is a rounding of a rounding.
    digits = len(volts.partition(".")[2])
    assert ours == pytest.approx(float(volts), abs=0.6 * 10**-digits)
    assert spice.read(network, a, b, ohms) == pytest.approx(ours, rel=1e-4, abs=1e-3)


@pytest.mark.parametrize("family", families.FAMILIES, ids=lambda f: f.__name__)
def test_numpy_and_ngspice_agree(family):
    """Two members of each family, four pairs each, with the instrument wired in."""
    rng = np.random.default_rng(7)
    for _ in range(2):
        scene = instrument.make(rng, family, steps=False)
        pairs = [tuple(r["pair"]) for r in scene.case["readings"]][:4]
        for a, b in pairs:
            ours = scene.solved.read(a, b, scene.ohms)
            assert spice.read(scene.board.network, a, b, scene.ohms) == pytest.approx(ours, rel=2e-4, abs=2e-3), (a, b)


# --- the judge -------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(("steps", "least"), [(False, 0.95), (True, 0.80)], ids=["volts", "steps"])
def test_random_faults(steps: bool, least: float):
    """No false "proved dead", and the first diagnosis is right as often as promised."""
    right, count, wrong, needless = Counter(), Counter(), defaultdict(Counter), 0
    for scene in scenes(2026, families.FAMILIES, steps=steps):
        answer = judged(scene.case)
        if scene.board.reference_good and above_limit(scene, steps=steps):
            assert answer["verdict"] == "treat-as-live", f"{scene.family}: {json.dumps(scene.case)}"
        first = answer["diagnoses"][0]["cause"] if answer["diagnoses"] else "none"
        count[scene.family] += 1
        right[scene.family] += first in scene.board.right
        wrong[scene.family][first] += first not in scene.board.right
        needless += bool(answer["repeat"])
    table = "\n".join(f"{f:20} {right[f]:3}/{n}  {dict(+wrong[f])}" for f, n in count.items())
    total = right.total() / count.total()
    print(f"\n{table}\nright {total:.1%} of {count.total()}; a pair to repeat without need {needless / count.total():.1%}")
    assert count.total() >= 500
    assert total >= least, table


@pytest.mark.parametrize("steps", [False, True], ids=["volts", "steps"])
def test_healthy_boards_are_proved_dead(steps: bool):
    """The judge that never says "proved dead" would pass every other test here."""
    rng = np.random.default_rng(11)
    dead = 0
    for _ in range(EACH):
        scene = instrument.make(rng, families.healthy, steps=steps)
        scene.case["dead_limit_volts"] = 3.0
        answer = judged(scene.case)
        dead += answer["verdict"] == "proved-dead"
        without = judged(scene.case | {"reference_proved": "no"})
        unsaid = judged({k: v for k, v in scene.case.items() if k != "reference_proved"})
        assert {without["verdict"], unsaid["verdict"]} <= {"incomplete", "treat-as-live"}
        if answer["verdict"] == "proved-dead":
            assert without["why"][0].startswith("The reference was not shown to be earth")
    assert dead >= 0.95 * EACH


def _quiet(**more) -> dict:
    """Five conductors, every pair without an indication, every proof."""
    names = ["L1", "L2", "L3", "N", "PE"]
    pairs = [[a, b] for k, a in enumerate(names) for b in names[k + 1 :]]
    return {
        "conductors": [{"name": n} for n in names],
        "earthing": "TN-S",
        "readings": [{"pair": p, "level": "none"} for p in pairs],
        "proved_before": True,
        "proved_after": True,
        "reference_proved": "known-line",
        **more,
    }


DIRECT = {"pair": ["L1", "PE"], "level": "none", "dc": True}

# What the plan demands, each taken away alone, and a word of the sentence that is said first.
LACKING = [
    ({"nominal_volts": {"line_neutral": 110}, "indicator": {"levels_volts": [120, 230, 400]}}, "The indicator begins at 120 V AC"),
    ({"equipment": ["drive"], "stored_energy": [{"what": "U1", "volts": 0}], "readings": [*_quiet()["readings"], DIRECT]}, "(DC)"),
    ({"poles_opened": ["L2"]}, "L1 is not opened"),
    ({"poles_opened": ["L1", "L2", "L3"], "earthing": "TT"}, "N is not opened"),
    ({"earthing": "IT"}, "A known live line proves no earth"),
    ({"reference_proved": "no"}, "The reference was not shown"),
    ({"readings": _quiet()["readings"][:-1]}, "Not read yet: N – PE"),
]


@pytest.mark.parametrize(("more", "says"), LACKING, ids=range(len(LACKING)))
def test_what_is_missing_is_incomplete_and_said_first(more: dict, says: str):
    """And the same file with everything in it is proved dead."""
    answer = judged(_quiet(**more))
    assert answer["verdict"] == "incomplete" and says in answer["why"][0], answer
    assert judged(_quiet())["verdict"] == "proved-dead"


@pytest.mark.parametrize("steps", [False, True], ids=["volts", "steps"])
def test_a_misplaced_probe_is_named(steps: bool):
    """One pair's reading is another pair's. Three-wire boards read in steps are the exception that docs/judge.md explains."""
    named, count, told = Counter(), Counter(), 0
    for scene in scenes(99, UNDER, steps=steps, misplaced=True):
        answer = judged(scene.case)
        size = len(scene.board.names)
        count[size] += 1
        named[size] += set(scene.misplaced) in [set(p) for p in answer["repeat"]]
        told += len(answer["repeat"])
    print({n: f"{named[n]}/{count[n]}" for n in sorted(count)}, f"{named.total() / count.total():.1%}", told / count.total())
    assert told <= 2 * count.total(), "naming everything would be no help"
    assert named[5] >= 0.9 * count[5]
    if not steps:
        assert named.total() >= 0.9 * count.total()


def test_open_neutral_by_millman():
    """The fitted potential of the neutral is Millman's 86.93 V from earth."""
    net, *_ = _millman("N", EARTH)
    net.r("PE", EARTH, 0.1)
    names = ["L1", "L2", "L3", "N", "PE"]
    solved = net.solve(names)
    pairs = [(a, b) for k, a in enumerate(names) for b in names[k + 1 :]]
    answer = judged(
        {
            "conductors": [{"name": n} for n in names],
            "earthing": "TN-S",
            "nominal_volts": {"line_neutral": 230},
            "readings": [{"pair": list(p), "volts": round(solved.read(*p), 1)} for p in pairs],
            "proved_before": True,
            "proved_after": True,
            "reference_proved": "known-line",
        }
    )
    assert answer["verdict"] == "treat-as-live"
    assert answer["diagnoses"][0]["cause"] == "open-neutral" and answer["diagnoses"][0]["fit"] > 0.99
    at = {p["name"]: complex(p["x"], p["y"]) for p in answer["potentials"]}
    assert abs(at["N"] - at["PE"]) == pytest.approx(86.93, abs=1.0)
