"""Bad files for `stillbar plan`, `judge`, `supply` and `company-rules`: one clear sentence with the place, exit code 2, nothing printed."""

import json
import re
from pathlib import Path

import pytest

from support.desk import ROOT, command, refused

SCHEMA = json.loads((ROOT / "docs" / "schemas" / "plan.schema.json").read_text(encoding="utf-8"))
NETWORK_SCHEMA = json.loads((ROOT / "docs" / "schemas" / "supply.schema.json").read_text(encoding="utf-8"))

THREE = [{"name": "L"}, {"name": "N"}, {"name": "PE"}]


def told(folder: Path, content: str | bytes, verb: str = "plan") -> str:
    """The sentence that the command says about this file, without the file's name."""
    path = folder / "board.json"
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    words = {"supply": ("supply", "check", path, "--zone", "B3"), "company-rules": ("company-rules", "check", path)}.get(verb, (verb, path))
    done = command(*words)
    refused(done, 2, str(path))
    assert done.err.count("\n") == 1 and done.err.endswith(".\n"), f"one sentence on one line:\n{done.err}"
    assert len(done.err) < 500, done.err
    return done.err.removeprefix(f"{path}: ")


NOT_JSON = [
    ("", "it is empty; write at least"),
    ("   \n", "it is empty"),
    ("{", "line 1, column 1: this is not JSON"),
    ('{"conductors":[}', "line 1, column 16: this is not JSON"),
    ('{\n  "conductors": [\n    {"name": "L",}\n', "line 3, column 18: this is not JSON"),
    ("nonsense", "line 1, column 2: this is not JSON"),
    ('{"conductors":[]} []', "line 1, column 19: this is not JSON"),
    ('{"hertz":1e999}', "line 1, column"),
    ('{"hertz":NaN}', "line 1, column"),
    ("[" * 500, "go too deep"),
    ('{"proved_after":false,\n"proved_after":true}', 'line 2, column 14: the field "proved_after" is there twice'),
    ("{" + ",".join(f'"f{i}":1' for i in range(80)) + "}", "more than 64 fields"),
    (b'{"conductors":"\xff\xfe"}', "byte 16 is not UTF-8"),
    (b"\x89PNG\r\n\x1a\n", "byte 1 is not UTF-8"),
    (" " * (1 << 20) + "{}", "it is larger than 1048576 bytes"),
    ("[]", "An object in braces belongs here, not a list"),
    ("null", "An object in braces belongs here, not null"),
]


@pytest.mark.parametrize("verb", ["plan", "judge"])
@pytest.mark.parametrize(("content", "says"), NOT_JSON, ids=range(len(NOT_JSON)))
def test_what_is_not_json(verb: str, content: str | bytes, says: str, tmp_path: Path):
    """The line and the column, or the byte."""
    assert says in told(tmp_path, content, verb)


def five(**more) -> dict:
    """A good case with something added."""
    return {"conductors": [{"name": n} for n in ("L1", "L2", "L3", "N", "PE")], **more}


def reading(**more) -> dict:
    """A good case with one reading."""
    return five(readings=[{"pair": ["L1", "N"], "volts": 0}, more])


ALL = [["L", "N"], ["N", "PE"], ["L", "PE"]]

WRONG = [
    # conductors
    ({}, 'the field "conductors" is missing; list them'),
    ({"conductors": "L1,N"}, "conductors: A list in square brackets belongs here, not a text"),
    ({"conductors": [{"name": "L"}]}, "conductors: a dead test needs at least two conductors"),
    ({"conductors": [{"name": f"X{i}", "role": "line"} for i in range(65)]}, "conductors: this list has 65 items and at most 64"),
    ({"conductors": [{"name": "L"}, {"role": "line"}]}, 'conductors[1]: the field "name" is missing'),
    ({"conductors": [{"name": "L"}, {"name": "L"}]}, 'conductors[1].name: "L" is the name of conductors[0] too'),
    ({"conductors": [{"name": "L"}, {"name": "thirteen char"}]}, "conductors[1].name: this has 13 characters and at most 12"),
    ({"conductors": [{"name": "L"}, {"name": " N"}]}, "conductors[1].name: a name needs characters that can be seen"),
    ({"conductors": [{"name": "L"}, {"name": "a\nb"}]}, "conductors[1].name: a name needs"),
    ({"conductors": [{"name": "L"}, {"name": 5}]}, "conductors[1].name: A text in quotation marks belongs here, not a number"),
    ({"conductors": [{"name": "L"}, {"name": "brown"}]}, 'conductors[1]: the role of "brown" does not follow from its name'),
    ({"conductors": [{"name": "L"}, {"name": "N"}, {"name": "A", "role": "blue"}]}, 'conductors[2].role: "blue" is not one of line,'),
    ({"conductors": [{"name": "L"}, {"name": "PE", "role": "line"}]}, "conductors[1].role: PE designates a protective conductor"),
    ({"conductors": [{"name": "L"}, {"name": "N", "colour": "blue"}]}, 'conductors[1]: the field "colour" is not known here'),
    # what contradicts itself
    (five(earthing="TN-C"), "earthing: TN-C has no neutral beside the PEN conductor, and N is a neutral"),
    ({"conductors": [{"name": "L"}, {"name": "PEN"}], "earthing": "TT"}, "earthing: TT has no PEN conductor, and PEN is one"),
    (five(earthing="TN"), 'earthing: "TN" is not one of TN-C-S,'),
    (five(nominal_volts={"line_neutral": 230, "line_line": 230}), "nominal_volts: 230 V line to line does not belong to 230 V"),
    (five(nominal_volts={"line_neutral": 0}), "nominal_volts.line_neutral: a nominal voltage of less than 1 V"),
    (five(nominal_volts={"line_neutral": "230"}), "nominal_volts.line_neutral: A number of volts without a unit"),
    (five(nominal_volts={"line_neutral": 20000}), "nominal_volts: above 1000 V AC or 1500 V DC between conductors this is not low voltage"),
    (five(nominal_volts={"line_neutral": 600}), "nominal_volts: above 1000 V AC"),
    (five(nominal_volts={"dc": 1501}), "nominal_volts: above 1000 V AC or 1500 V DC"),
    (five(nominal_volts={"line_neutral": 1e12}), "nominal_volts.line_neutral: this is more than 4294967 V, the most that can be saved"),
    (five(nominal_volts=230), "nominal_volts: An object in braces belongs here, not a number"),
    (five(hertz=49.5), "hertz: a whole number of hertz from 0 to 1000"),
    (five(poles_opened=["L1", "PE"]), "poles_opened[1]: PE is a protective or PEN conductor"),
    (five(poles_opened=["L1", "L4"]), 'poles_opened[1]: "L4" is not in "conductors"'),
    (five(poles_opened=["L1", "L1"]), 'poles_opened[1]: "L1" is there twice'),
    (five(order="earth-first", own_order=[]), 'order: "own_order" is given too'),
    (five(order="random"), 'order: "random" is not one of least-dangerous-first'),
    ({"conductors": THREE, "own_order": ALL[:2]}, "own_order: L and PE are missing"),
    ({"conductors": THREE, "own_order": [*ALL, ["N", "L"]]}, "own_order[3]: N and L are there twice"),
    ({"conductors": THREE, "own_order": [["L", "L"]]}, 'own_order[0]: both are "L"'),
    ({"conductors": THREE, "own_order": [["L"]]}, "own_order[0]: a pair is two names"),
    (five(dead_limit_volts=50), "dead_limit_volts: a limit for dead has to be below 50 V AC here: below 50 V (EN 61243-3)"),
    (five(dead_limit_volts=12, nominal_volts={"control": 24}), "dead_limit_volts: a limit for dead has to be below 12 V AC here"),
    (five(dead_limit_dc_volts=120), "dead_limit_dc_volts: a limit for dead has to be below 120 V DC here"),
    (five(dead_limit_dc_volts=-1), "dead_limit_dc_volts: -1 V is below zero"),
    (five(indicator={"levels_volts": [50, 24]}), "indicator.levels_volts[1]: the steps of an indicator rise"),
    (five(indicator={"levels_volts": []}), "indicator.levels_volts: an indicator has at least one step"),
    (five(indicator={"dc_levels_volts": [50, 50]}), "indicator.dc_levels_volts[1]: the steps of an indicator rise"),
    (five(equipment=["heater"]), 'equipment[0]: "heater" is not one of drive, ups, pv, generator'),
    (five(equipment=["ups", "ups"]), "equipment[1]: this is there twice"),
    (five(stored_energy=[{"label_seconds": 5}]), 'stored_energy[0]: the field "what" is missing'),
    (five(stored_energy=[{"what": "drive", "label_seconds": -1}]), "stored_energy[0].label_seconds: a whole number of seconds"),
    (five(stored_energy=[{"what": "drive", "waited_seconds": 0.5}]), "stored_energy[0].waited_seconds: a whole number of seconds"),
    (five(stored_energy=[{"what": "drive", "read_at": ["L1", "N"], "volts": 0}]), 'stored_energy[0]: "read_at" says between which conductors'),
    (five(stored_energy=[{"what": "drive", "volts": 0, "level": "none"}]), 'stored_energy[0].level: "volts" is given too'),
    # readings
    (reading(pair=["L1", "N"]), "readings[1]: what was read is missing"),
    (reading(pair=["L1", "N"], volts=1, level="none"), 'readings[1].level: "volts" is given too'),
    (reading(pair=["L1", "N"], volts=-3), "readings[1].volts: -3 V is below zero"),
    (reading(pair=["L1", "N"], volts=1e10), "readings[1].volts: this is more than 4294967 V, the most that can be saved"),
    (reading(pair=["L1", "N"], volts=None), "readings[1].volts: A number of volts"),
    (reading(pair=["L1", "X"], volts=1), 'readings[1].pair[1]: "X" is not in "conductors"'),
    (reading(pair=["L1", "L1"], volts=1), 'readings[1].pair: both are "L1"'),
    (reading(pair=["L1", "L2", "L3"], volts=1), "readings[1].pair: this list has 3 items"),
    (reading(pair=["L1", "N"], level="bright"), 'readings[1].level: "bright" is not one of none, continuity, lit'),
    (reading(pair=["L1", "N"], level=231), "readings[1].level: the indicator has no such step"),
    (reading(pair=["L1", "N"], volts=1, impedance="lo"), 'readings[1].impedance: "lo" is not one of low, high, unknown'),
    (five(readings=[{}] * 20_001), "readings: this list has 20001 items and at most 20000"),
    (five(proved_after="yes"), "proved_after: true or false belongs here, not a text"),
    (five(proved_before=None), "proved_before: true or false belongs here, not null; leave it out if it is not known"),
    (five(reference_proved="maybe"), 'reference_proved: "maybe" is not one of no, known-line'),
    (five(proved_befor=True), 'the field "proved_befor" is not known here'),
]


@pytest.mark.parametrize(("case", "says"), WRONG, ids=range(len(WRONG)))
def test_what_is_wrong_is_said_with_its_place(case: dict, says: str, tmp_path: Path):
    """The path of the field, and the fix."""
    assert told(tmp_path, json.dumps(case)).startswith(says)


@pytest.mark.parametrize("verb", ["plan", "judge"])
@pytest.mark.parametrize(
    ("path", "says"),
    [("/nowhere/board.json", "is not there"), ("/", "is a folder"), ("/dev/zero", "it is larger than 1048576 bytes")],
)
def test_what_cannot_be_read(verb: str, path: str, says: str):
    """No file, a folder, and a file without an end."""
    refused(command(verb, path), 2, says)


def test_one_of_file_and_list():
    """Neither, both, and an order beside a file that may say another."""
    refused(command("plan"), 2, "--conductors", "FILE")
    refused(command("plan", "board.json", "--conductors", "L,N"), 2, "cannot be used with")
    refused(command("plan", "board.json", "--order", "earth-first"), 2, "cannot be used with")


def test_a_byte_order_mark_is_no_error(tmp_path: Path):
    """Some editors put one in front."""
    path = tmp_path / "board.json"
    path.write_bytes(b"\xef\xbb\xbf" + json.dumps(five()).encode())
    assert command("plan", path).code == 0


def test_cut_off_anywhere(tmp_path: Path):
    """A file that ends too early is refused wherever it ends, and never taken for a smaller one."""
    whole = json.dumps(reading(pair=["L2", "N"], level="none") | {"proved_before": True, "proved_after": True})
    for end in range(0, len(whole), 7):
        done = command("judge", "-", piped=whole[:end])
        assert (done.code, done.out) == (2, ""), whole[:end]


def known_by_the_command(folder: Path, case: dict) -> set[str]:
    """The fields that the command names when it refuses one."""
    said = told(folder, json.dumps(case))
    return set(re.search(r"known are (.*)\.\n", said)[1].split(", "))


def test_the_schema_has_the_fields_of_the_command(tmp_path: Path):
    """The schema and the reader name the same fields, in every object of the format."""
    props = SCHEMA["properties"]
    for case, schema in [
        (five(x=1), SCHEMA),
        ({"conductors": [{"x": 1}, {}]}, props["conductors"]["items"]),
        (five(nominal_volts={"x": 1}), props["nominal_volts"]),
        (five(indicator={"x": 1}), props["indicator"]),
        (five(stored_energy=[{"x": 1}]), props["stored_energy"]["items"]),
        (five(readings=[{"x": 1}]), props["readings"]["items"]),
    ]:
        assert known_by_the_command(tmp_path, case) == set(schema["properties"])


def test_the_schema_has_the_words_of_the_command(tmp_path: Path):
    """Every choice of the schema is one of the command, and the other way round."""
    props = SCHEMA["properties"]
    for case, enum in [
        ({"conductors": [{"name": "A", "role": "x"}, {}]}, props["conductors"]["items"]["properties"]["role"]["enum"]),
        (five(earthing="x"), props["earthing"]["enum"]),
        (five(order="x"), props["order"]["enum"]),
        (five(equipment=["x"]), props["equipment"]["items"]["enum"]),
        (five(reference_proved="x"), props["reference_proved"]["enum"]),
        (five(indicator={"impedance": "x"}), SCHEMA["$defs"]["impedance"]["enum"]),
    ]:
        said = told(tmp_path, json.dumps(case))
        assert set(re.search(r"is not one of (.*)\.\n", said)[1].split(", ")) == set(enum)


def test_the_schema_has_the_fields_of_the_answer(tmp_path: Path):
    """What `plan --json` prints is what the schema says."""
    path = tmp_path / "board.json"
    path.write_text(json.dumps(five(equipment=["drive"])), encoding="utf-8")
    answer = json.loads(command("plan", path, "--json").out)
    schema = SCHEMA["$defs"]["answer"]
    assert set(answer) == set(schema["properties"]) == set(schema["required"])
    props = schema["properties"]
    for given, listed in [
        (answer["tests"][0], props["tests"]["items"]),
        (answer["reference"], props["reference"]),
        (answer["stored_energy"][0], props["stored_energy"]["items"]),
        (answer["dc_test"], props["dc_test"]["oneOf"][1]),
    ]:
        assert set(given) == set(listed["properties"]) == set(listed["required"])


# --- networks --------------------------------------------------------------------------------------------------------------------

NO_NETWORK = [
    ("", "it is empty; write at least"),
    ("{", "line 1, column 1: this is not JSON"),
    ('{"nodes":[}', "line 1, column 11: this is not JSON"),
    ('{"nodes":[],"links":[]} []', "line 1, column 25: this is not JSON"),
    ('{"nodes":[],\n"nodes":[],"links":[]}', 'line 2, column 7: the field "nodes" is there twice'),
    ('{"nodes":[{"id":"B3","id":"B4","kind":"board"}],"links":[]}', 'line 1, column 25: the field "id" is there twice'),
    (b'{"nodes":"\xff\xfe"}', "byte 11 is not UTF-8"),
    ("[]", 'An object in braces belongs here, with "nodes" and "links".'),
    ("null", "An object in braces belongs here"),
    ('{"nodes":{}}', "nodes: A list in square brackets belongs here."),
    ('{"nodes":[3]}', "nodes[0]: An object in braces belongs here."),
    ("[" * 500, "An object in braces belongs here"),
    ('{"nodes":[{"id":' + "[" * 500, "go too deep"),
    ('{"_module":"pandapower.auxiliary","_class":"pandapowerNet","_object":{"bus":5}}', "bus: the table is not as pandapower"),
]


@pytest.mark.parametrize(("content", "says"), NO_NETWORK, ids=range(len(NO_NETWORK)))
def test_what_is_no_network(content: str | bytes, says: str, tmp_path: Path):
    """The line and the column, or the byte, or the field."""
    assert says in told(tmp_path, content, "supply")


B3 = {"id": "B3", "kind": "board"}
GRID = {"id": "grid", "kind": "source"}


def net(node: dict | None = None, link: dict | None = None, **more) -> dict:
    """A good network with one more node, or with a link between its two nodes."""
    links = [] if link is None else [{"id": "Q1", "from": "grid", "to": "B3", "kind": "switch"} | link]
    return {"nodes": [GRID, B3] + ([] if node is None else [{"id": "X", "kind": "load"} | node]), "links": links, **more}


WRONG_NETWORK = [
    ({}, 'the fields "nodes" and "links" must both be there'),
    ({"nodes": [B3]}, 'the fields "nodes" and "links" must both be there'),
    (net(zone="B3"), 'the field "zone" is not known here; known are nodes, links.'),
    (net(node={"colour": "red"}), 'nodes[2]: the field "colour" is not known here; known are id, kind, sort,'),
    ({"nodes": [B3, {"id": "B4"}], "links": []}, 'nodes[1]: the field "kind" is missing; say source'),
    ({"nodes": [{"kind": "board"}], "links": []}, 'nodes[0]: the field "id" is missing'),
    (net(node={"id": "B3"}), 'nodes[2].id: "B3" is the id of nodes[1] too; give each its own id.'),
    (net(node={"id": ""}), "nodes[2].id: a text needs at least one character"),
    (net(node={"id": 7}), "nodes[2].id: A text in quotation marks belongs here, not a number."),
    (net(node={"id": "Q1,Q2"}), 'nodes[2].id: "Q1,Q2" has a comma, which parts ids in lists'),
    (net(node={"id": "x" * 41}), "nodes[2].id: this has 41 characters and at most 40 are taken"),
    (net(node={"label": " a"}), "nodes[2].label: a text needs characters that can be seen"),
    (net(node={"stops": "a\nb"}), "nodes[2].stops: a text needs characters that can be seen"),
    (net(node={"tell": "Porter"}), "nodes[2].tell: A list in square brackets belongs here, not a text."),
    (net(node={"tell": ["x"] * 21}), "nodes[2].tell: this list has 21 items and at most 20 are taken"),
    (net(node={"circuit": "yes"}), "nodes[2].circuit: true or false belongs here, not a text."),
    (net(node={"sort": "grid"}), "nodes[2].sort: only a source has a sort, and this is of the kind load"),
    (net(node={"kind": "source", "sort": "sun"}), 'nodes[2].sort: "sun" is not one of grid, second-feeder,'),
    (net(link={"to": "grid"}), 'links[0].to: "grid" is the other end too'),
    (net(link={"lockable": "yes"}), "links[0].lockable: true or false belongs here, not a text."),
    (net(link={"kind": "cable", "lockable": True}), "links[0].lockable: a cable does not part conductors"),
    (net(link={"kind": "inverter", "lockable": True}), "links[0].lockable: an islanding inverter does not part conductors"),
    (net(link={"normally": "shut"}), 'links[0].normally: "shut" is not one of open, closed.'),
    (net(link={"poles": 0}), "links[0].poles: a whole number from 1 to 64 belongs here"),
    (net(link={"poles": 2.5}), "links[0].poles: a whole number from 1 to 64 belongs here"),
    (net(link={"poles": ["L1", "L1"]}), 'links[0].poles: "L1" is empty or there twice'),
    (net(link={"conductors": []}), "links[0].conductors: 1 to 64 conductors belong here, not 0."),
    (net(link={"from": "B3", "to": "X", "kind": "inlet"}, node={}), "links[0].kind: an inlet needs a source at one end"),
    ({"nodes": [GRID, B3], "links": [{"id": "a", "from": "grid", "to": "B3", "kind": "tie"}] * 2}, 'links[1].id: "a" is the id of links[0] too'),
    ({"nodes": [GRID], "links": []}, '--zone: "B3" is not in it; name a node or a link as the network does.'),
]


@pytest.mark.parametrize(("case", "says"), WRONG_NETWORK, ids=range(len(WRONG_NETWORK)))
def test_what_is_wrong_in_a_network_is_said_with_its_place(case: dict, says: str, tmp_path: Path):
    """The part by its number, its field, and the fix."""
    assert told(tmp_path, json.dumps(case), "supply").startswith(says)


def test_a_pair_of_csv_files_is_told_apart(tmp_path: Path):
    """The error names the file and the line. What belongs to the reader itself is in core/tests/it/supply/files.rs."""
    nodes, links = tmp_path / "nodes.csv", tmp_path / "links.csv"
    nodes.write_text("id,kind\ngrid,source\nB3,board\n", encoding="utf-8")
    links.write_text("id,from,to,kind,lockable\nQ1,grid,B3,switch,yes\nQ2,grid,B3,switch,maybe\n", encoding="utf-8")
    words = ("supply", "check", "--nodes", nodes, "--links", links, "--zone", "B3")
    done = command(*words)
    refused(done, 2)
    assert done.err == f'{links}: line 3, lockable: "maybe" is not one of true, false, yes, no, 1, 0.\n'
    links.write_text("id,from,to,kind\nQ1,grid,B3,switch\n", encoding="utf-8")
    nodes.write_text("id,kind\ngrid,source\ngrid,board\n", encoding="utf-8")
    done = command(*words)
    refused(done, 2)
    assert done.err == f'{nodes}: line 3, id: "grid" is the id of line 2 too; give each its own id.\n'
    nodes.unlink()
    refused(command(*words), 2, str(nodes), "is not there")
    refused(command("supply", "check", "--nodes", nodes, "--zone", "B3"), 2, "--links")
    refused(command("supply", "check", "--zone", "B3"), 2, "NET.json")
    refused(command("supply", "propose", "/", "--zone", "B3"), 2, "is a folder")


def test_a_network_cut_off_anywhere(tmp_path: Path):
    """A file that ends too early is refused wherever it ends: half a network would hide a source."""
    whole = json.dumps(net(node={"stops": "lighting 2"}, link={"lockable": True}))
    for end in range(0, len(whole), 5):
        done = command("supply", "check", "-", "--zone", "B3", piped=whole[:end])
        assert (done.code, done.out) == (2, ""), whole[:end]


def test_the_schema_of_networks_has_the_fields_and_words_of_the_command(tmp_path: Path):
    """The schema and the reader name the same fields, and the same words where others are refused."""

    def says(case: dict) -> str:
        return told(tmp_path, json.dumps(case), "supply")

    for case, schema in [
        (net(x=1), NETWORK_SCHEMA),
        (net(node={"x": 1}), NETWORK_SCHEMA["$defs"]["node"]),
        (net(link={"x": 1}), NETWORK_SCHEMA["$defs"]["link"]),
    ]:
        assert set(re.search(r"known are (.*)\.\n", says(case))[1].split(", ")) == set(schema["properties"])
    node, link = (NETWORK_SCHEMA["$defs"][part]["properties"] for part in ("node", "link"))
    for case, enum in [
        (net(node={"kind": "source", "sort": "x"}), node["sort"]["enum"]),
        (net(link={"normally": "x"}), link["normally"]["enum"]),
    ]:
        assert set(re.search(r"is not one of (.*)\.\n", says(case))[1].split(", ")) == set(enum)
    for case, enum in [(net(node={"kind": "x"}), node["kind"]["enum"]), (net(link={"kind": "x"}), link["kind"]["enum"])]:
        done = command("supply", "check", "-", "--zone", "B3", "--json", piped=json.dumps(case))
        [remark] = json.loads(done.out)["remarks"]
        assert set(re.search(r"known here \((.*?)\)", remark)[1].split(", ")) == set(enum)


RULES = (ROOT / "docs" / "company-rules.md").read_text(encoding="utf-8").split("```json\n")[1].split("```")[0]

NO_RULES = [
    ("", "it is empty; write at least"),
    ("{", "line 1, column 1: this is not JSON"),
    (b'{"company":"\xff\xfe"}', "byte 13 is not UTF-8"),
    (" " * (1 << 14) + "{}", "it is larger than 16384 bytes"),
    ("[]", "An object in braces belongs here, not a list"),
    ('{"company":"Alder","company":"Finch"}', 'the field "company" is there twice'),
    ({"version": None}, "version: A text in quotation marks belongs here, not null"),
    ({"never_asked": ["rcd"]}, 'the field "never_asked" is not known here'),
    ({"always_asked": ["right-board"]}, "always_asked[0]: "),
    ({"dead_limit": {"ac_volts": 50, "dc_volts": 0, "rule": "WI 12"}}, "dead_limit.ac_volts: a limit for dead has to be below 50 V AC"),
    ({"minutes_between_proofs": 61}, "minutes_between_proofs: a whole number of minutes from 1 to 60"),
    ({"points": [{"code": "a", "stage": "plan", "text": "Is it so?"}]}, 'points[0].stage: "plan" is not one of isolate, work, restore'),
    ({"call": [{"who": "Gate", "number": "ask"}]}, "call[0].number: a telephone number"),
]


@pytest.mark.parametrize(("content", "says"), NO_RULES, ids=range(len(NO_RULES)))
def test_what_are_no_rules_of_a_company(content: str | bytes | dict, says: str, tmp_path: Path):
    """Also where the rest of the file is as it should be."""
    file = json.dumps(json.loads(RULES) | content) if isinstance(content, dict) else content
    assert says in told(tmp_path, file, "company-rules")


def test_rules_are_told_and_read_again(tmp_path: Path):
    """What the command prints for a program is the file again, under the same name."""
    path = tmp_path / "rules.json"
    path.write_text(RULES, encoding="utf-8")
    first = command("company-rules", "check", path, "--json")
    said = json.loads(first.out)
    path.write_text(json.dumps(said["rules"]), encoding="utf-8")
    assert command("company-rules", "check", path, "--json").out == first.out
    text = command("company-rules", "check", path)
    assert (text.code, text.err) == (0, "") and said["sha256"] in text.out and "Duty engineer: 01632 960 120" in text.out
