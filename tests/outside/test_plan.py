"""`stillbar plan` against combinatorics, published counts and the trade's practice."""

import json
import math
from pathlib import Path

import pytest

from support.desk import ROOT, command

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


# What the file of a plan says beside the conductors: the example of docs/formats.md.
EXAMPLE = {
    "conductors": [
        {"name": "L1", "role": "line"},
        {"name": "L2", "role": "line"},
        {"name": "L3", "role": "line"},
        {"name": "N", "role": "neutral"},
        {"name": "PE", "role": "protective"},
    ],
    "earthing": "TN-C-S",
    "nominal_volts": {"line_neutral": 230},
    "poles_opened": ["L1", "L2", "L3"],
    "order": "least-dangerous-first",
}


def of_file(folder: Path, **changes) -> dict:
    """The plan of the example with changes; a change to None takes the field out."""
    case = {k: v for k, v in {**EXAMPLE, **changes}.items() if v is not None}
    path = folder / "board.json"
    path.write_text(json.dumps(case), encoding="utf-8")
    done = command("plan", path, "--json")
    assert (done.code, done.err) == (0, "")
    return json.loads(done.out)


def between(answer: dict, *pair: str) -> dict:
    """The test of a pair."""
    (found,) = [t for t in answer["tests"] if set(t["pair"]) == set(pair)]
    return found


def test_the_example_of_the_docs_is_taken(tmp_path: Path):
    """What docs/formats.md shows is what the command takes, and the same as the list on the command line."""
    page = (ROOT / "docs" / "formats.md").read_text(encoding="utf-8")
    shown = page.split("## Plan file", 1)[1].split("```json\n", 1)[1].split("```", 1)[0]
    assert json.loads(shown) == EXAMPLE
    assert [t["pair"] for t in of_file(tmp_path)["tests"]] == [t["pair"] for t in plan(FIVE)]


def test_a_case_can_be_piped_in():
    """`-` reads the standard input."""
    done = command("plan", "-", "--json", piped=json.dumps(EXAMPLE))
    assert (done.code, done.err) == (0, "")
    assert len(json.loads(done.out)["tests"]) == 10


def played(tests: list[dict]) -> int:
    """Plays the plan with two probes and counts what is put on; a free tip under something worse fails."""
    danger = {t: DANGER.get(t, 2) for test in tests for t in test["pair"]}
    on: set[str] = set()
    moves = 0
    for test in tests:
        pair = set(test["pair"])
        stays = on & pair if test["held"] else set()
        assert stays == ({test["held"]} if test["held"] else set())
        for held in stays:
            assert all(danger[held] <= danger[end] for end in on ^ pair), test
        if not stays:
            assert danger[test["first"]] <= danger[test["then"]]
        moves += len(pair - stays)
        on = pair
    return moves


@pytest.mark.parametrize("order", ["least-dangerous-first", "line-line-first", "earth-first"])
def test_the_ten_steps_take_thirteen_moves(order: str, tmp_path: Path):
    """10 pairs and 3 levels of danger with a pair (neutral, protective, line): 13 is the bound of docs/formats.md."""
    answer = of_file(tmp_path, order=order)
    assert played(answer["tests"]) == answer["moves"] == answer["fewest_moves"] == 10 + 3


# The table "N to PE" of docs/formats.md: engineering inference, to be checked by a reader of BS 7671 or IEC 60364.
NEUTRAL_TO_EARTH = [
    ("TN-S", False, ["low resistance", "at the source", "at most a few volts", "broken N or PE"]),
    ("TN-C-S", False, ["very low resistance", "at the origin", "at most a few volts", "continuity is normal"]),
    ("TN-S", True, ["open circuit", "induced", "borrowed neutral"]),
    ("TN-C-S", True, ["open circuit", "induced", "borrowed neutral"]),
    ("TT", False, ["some volts", "tens to hundreds of ohms", "N has to be opened"]),
    ("TT", True, ["open circuit", "induced"]),
    ("IT", False, ["high resistance", "first fault can hide"]),
    ("IT", True, ["high resistance", "first fault can hide"]),
]


@pytest.mark.parametrize(("earthing", "opened", "words"), NEUTRAL_TO_EARTH)
def test_neutral_to_earth_by_arrangement(earthing: str, opened: bool, words: list[str], tmp_path: Path):
    """What N to PE should show, and the note that somebody has to check it."""
    poles = ["L1", "L2", "L3", "N"] if opened else ["L1", "L2", "L3"]
    answer = of_file(tmp_path, earthing=earthing, poles_opened=poles)
    expect = between(answer, "N", "PE")["expect"]
    assert all(w in expect for w in words), expect
    assert any("engineering inference" in n for n in answer["notes"])
    warned = any("N is not opened" in w for w in answer["warnings"])
    assert warned == (earthing in ("TT", "IT") and not opened)


@pytest.mark.parametrize(
    ("line_neutral", "line_line"), [(120, 208), (127, 220), (230, 398), (240, 416), (277, 480), (347, 601), (400, 693)]
)
def test_line_to_line_is_root_three(line_neutral: int, line_line: int, tmp_path: Path):
    """Whole volts of line_neutral times math.sqrt(3)."""
    assert round(line_neutral * math.sqrt(3)) == line_line
    answer = of_file(tmp_path, nominal_volts={"line_neutral": line_neutral})
    assert f"about {line_line} V" in between(answer, "L1", "L2")["expect_not_dead"]
    assert f"about {line_neutral} V" in between(answer, "N", "L1")["expect_not_dead"]
    assert f"about {line_neutral} V" in between(answer, "PE", "L1")["expect_not_dead"]


def test_in_it_a_live_line_may_show_nothing_to_earth(tmp_path: Path):
    """IEC 60364-1: no live part is earthed; so a known line proves no reference either."""
    answer = of_file(tmp_path, earthing="IT", nominal_volts={"line_line": 400})
    assert "none may show" in between(answer, "PE", "L1")["expect_not_dead"]
    assert not any("known to be live" in way for way in answer["reference"]["ways"])
    # Nor where nobody knows whether it is IT.
    unknown = of_file(tmp_path, earthing=None)
    assert not any("known to be live" in way for way in unknown["reference"]["ways"])
    assert any("known live line proves no earth" in n for n in unknown["notes"])


def test_an_indicator_that_begins_too_late_is_warned_of(tmp_path: Path):
    """By 50 V AC (EN 61243-3), and by half of the lowest voltage of a source: 27.5 V where two lines of 110 V are earthed in the middle."""
    two = [{"name": n} for n in ("L1", "L2", "PE")]
    for begins, late in [(27, False), (28, True)]:
        answer = of_file(tmp_path, conductors=two, poles_opened=None, nominal_volts={"line_line": 110}, indicator={"levels_volts": [begins]})
        assert any("27.5 V or less" in w for w in answer["warnings"]) == late


def test_the_reference_has_to_be_shown(tmp_path: Path):
    """All pairs at zero also happens when the reference is broken; without one in the list nothing can be shown."""
    reference = of_file(tmp_path)["reference"]
    assert reference["conductor"] == "PE"
    assert "broken" in reference["why"] and len(reference["ways"]) == 3
    answer = of_file(tmp_path, conductors=EXAMPLE["conductors"][:4])
    assert answer["reference"]["conductor"] is None
    assert any("No protective or PEN conductor" in w for w in answer["warnings"])


@pytest.mark.parametrize("kind", ["drive", "ups", "pv"])
def test_a_drive_a_ups_or_pv_asks_for_a_dc_test(kind: str, tmp_path: Path):
    """Every pair is read in the DC range too, and something has to discharge."""
    answer = of_file(tmp_path, equipment=[kind])
    assert len(answer["dc_test"]["pairs"]) == 10
    assert answer["stored_energy"][0]["wait_seconds"] is None
    assert of_file(tmp_path)["dc_test"] is None


def test_a_charge_is_never_passed_on_time_alone(tmp_path: Path):
    """The label's time, and then a DC reading at the terminals that were named."""
    conductors = [*EXAMPLE["conductors"], {"name": "L+"}, {"name": "L-"}]
    stored = [{"what": "drive U1", "label_seconds": 600, "read_at": ["L+", "L-"]}]
    answer = of_file(tmp_path, conductors=conductors, stored_energy=stored, nominal_volts={"line_neutral": 230, "dc": 565})
    (wait,) = answer["stored_energy"]
    assert (wait["wait_seconds"], wait["read_at"]) == (600, ["L+", "L-"])
    assert "600 s" in wait["steps"][0]
    assert "direct voltage" in wait["steps"][1] and "time alone proves nothing" in wait["steps"][1]
    assert "about 565 V" in between(answer, "L+", "L-")["expect_not_dead"]
    assert any("L+, L-" in w and "treat as live" in w for w in answer["warnings"])
    # Behind a battery the same poles are fed, and need a point of their own.
    answer = of_file(tmp_path, conductors=conductors, stored_energy=stored, equipment=["ups"])
    assert any("Not opened" in w and "L+, L-" in w for w in answer["warnings"])


def test_two_supplies_in_one_enclosure(tmp_path: Path):
    """Between two supplies stands at worst twice the line-to-neutral voltage, and each is isolated by itself."""
    second = [{"name": n, "role": r, "supply": "UPS"} for n, r in (("A1", "line"), ("AN", "neutral"))]
    first = [{**c, "supply": "mains"} if c["name"] != "PE" else c for c in EXAMPLE["conductors"]]
    answer = of_file(tmp_path, conductors=[*first, *second])
    assert len(answer["tests"]) == math.comb(7, 2)
    assert "up to 460 V" in between(answer, "L1", "A1")["expect_not_dead"]
    assert any("2 supplies" in w and "UPS, mains" in w for w in answer["warnings"])


def test_an_own_order_is_kept_and_priced(tmp_path: Path):
    """The pairs come as written, and what that costs is told."""
    written = [["L1", "PE"], ["L2", "N"], ["L1", "N"], ["L1", "L2"], ["PE", "L2"], ["N", "PE"]]
    four = [c for c in EXAMPLE["conductors"] if c["name"] != "L3"]
    answer = of_file(tmp_path, conductors=four, order=None, own_order=written, poles_opened=["L1", "L2"])
    assert [set(t["pair"]) for t in answer["tests"]] == [set(p) for p in written]
    assert played(answer["tests"]) == answer["moves"] == 10
    assert answer["fewest_moves"] == 9
    assert any("once more than the best order" in n for n in answer["notes"])


def test_sixty_four_conductors(tmp_path: Path):
    """The largest case: every pair once, within the bound."""
    conductors = [{"name": f"X{i}", "role": "line"} for i in range(63)] + [{"name": "PE"}]
    answer = of_file(tmp_path, conductors=conductors, poles_opened=None)
    assert len({frozenset(t["pair"]) for t in answer["tests"]}) == len(answer["tests"]) == math.comb(64, 2)
    assert played(answer["tests"]) == math.comb(64, 2) + 2
