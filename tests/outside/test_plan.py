"""`stillbar plan` against combinatorics, published counts and the trade's practice."""

import json
import math

import pytest

from support.desk import command

FIVE = "L1,L2,L3,N,PE"

# Two four-wire supplies that share one protective conductor: the largest set of the published tables that a board has.
NINE = ["L1", "L2", "L3", "N", "PE", "A1=line", "A2=line", "A3=line", "AN=neutral"]

# 0 can hurt least. Lines before neutral before protective: common practice, no source.
DANGER = {"PE": 0, "N": 1, "AN": 1}


def plan(conductors: str) -> list[dict]:
    """The tests of a plan."""
    done = command("plan", "--conductors", conductors, "--json")
    assert (done.code, done.err) == (0, "")
    return json.loads(done.out)["tests"]


@pytest.mark.parametrize("n", range(2, 10))
def test_each_pair_once(n: int):
    """As many tests as Python's math.comb says there are pairs, and no pair twice."""
    names = [name.split("=")[0] for name in NINE[:n]]
    tests = plan(",".join(NINE[:n]))
    assert len(tests) == math.comb(n, 2)
    pairs = {frozenset(t["pair"]) for t in tests}
    assert pairs == {frozenset((a, b)) for a in names for b in names if a != b}


@pytest.mark.parametrize(("conductors", "count"), [("L,N,PE", 3), (FIVE, 10)])
def test_published_counts(conductors: str, count: int):
    """UK guidance on proving dead counts 3 tests for a single-phase and 10 for a three-phase and neutral circuit."""
    assert len(plan(conductors)) == count


@pytest.mark.parametrize("conductors", [FIVE, "PE,N,L3,L2,L1", ",".join(NINE)])
def test_the_less_dangerous_conductor_gets_its_probe_first(conductors: str):
    """PE before N before a line, however the list is ordered (common practice, no source)."""
    for test in plan(conductors):
        assert test["pair"] == [test["first"], test["then"]]
        assert DANGER.get(test["first"], 2) <= DANGER.get(test["then"], 2), test


def test_sequence_of_three_phases_neutral_and_protective():
    """All line-neutral, neutral-PE, all line-PE, all line-line (common practice, no source)."""
    assert [(t["first"], t["then"]) for t in plan(FIVE)] == [
        ("N", "L1"),
        ("N", "L2"),
        ("N", "L3"),
        ("PE", "N"),
        ("PE", "L1"),
        ("PE", "L2"),
        ("PE", "L3"),
        ("L1", "L2"),
        ("L1", "L3"),
        ("L2", "L3"),
    ]
