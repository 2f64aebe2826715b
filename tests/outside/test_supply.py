"""`stillbar supply` against brute force, networkx's minimum cuts and pandapower's connectivity.

CLRS figure 26.1 is in core/tests/it/supply/flow.rs, because the command has no capacities; so is the same brute force in Rust.
"""

import csv
import io
import json
import random
import xml.etree.ElementTree as ET
from pathlib import Path

import networkx as nx
import pytest

from networks import Made, front, large, small
from support.desk import ROOT, command

SCHEMA = json.loads((ROOT / "docs" / "schemas" / "supply.schema.json").read_text(encoding="utf-8"))

SMALL = 2000
LARGE = 500
STATES = 200


def answer(*words: str | Path, piped: dict | None = None) -> dict | list:
    """What a command prints as JSON."""
    done = command("supply", *words, "--json", piped=None if piped is None else json.dumps(piped))
    assert (done.code, done.err) == (0, ""), done.err
    return json.loads(done.out)


def test_equal_to_brute_force():
    """Fewest circuits lost, fewest locks and all between, on 2,000 networks of up to 14 switches: every subset is tried."""
    choices = between = bare = 0
    for seed in range(SMALL):
        made = small(seed)
        said = answer("propose", "-", "--zone", made.zone, piped=made.file)
        assert said["complete"]
        got = [(len(p["loses"]), p["locks"]) for p in said["proposals"]]
        assert got == front(made), f"network {seed}: {json.dumps(made.file)}"
        assert all(p["cut"] and p["locks"] == len(p["lock"]) for p in said["proposals"])
        assert (said["bare"] is None) == bool(got)
        choices, between, bare = choices + (len(got) > 1), between + (len(got) > 2), bare + (not got)
    print(f"{choices} with a choice, {between} with something between the ends, {bare} that nothing cuts")
    assert choices > 200 and between > 30 and bare > 50


def least_cut(made: Made) -> tuple[float, nx.Graph]:
    """networkx's minimum cut between the zone and one node behind all sources. A link without a capacity is endless."""
    graph = nx.Graph()
    graph.add_nodes_from(n["id"] for n in made.nodes)
    graph.add_edges_from((n["id"], "all sources") for n in made.nodes if n["kind"] == "source")
    for link in made.links:
        a, b, locks = link["from"], link["to"], link.get("lockable", False)
        known = graph.get_edge_data(a, b)
        if known is None:
            graph.add_edge(a, b, **({"capacity": 1} if locks else {}))
        elif not locks:
            known.pop("capacity", None)
        elif "capacity" in known:
            known["capacity"] += 1
    try:
        return nx.minimum_cut_value(graph, made.zone, "all sources"), graph
    except nx.NetworkXUnbounded:
        return float("inf"), graph


def test_fewest_locks_are_networkx_minimum_cuts():
    """500 networks of 10 to 2,000 nodes; the points of each proposal part the zone from all sources for networkx too."""
    sizes, cuts, bare = [], 0, 0
    for seed in range(LARGE):
        made = large(seed)
        value, graph = least_cut(made)
        said = answer("propose", "-", "--zone", made.zone, piped=made.file)
        sizes.append(len(made.nodes))
        if value == float("inf"):
            assert said["proposals"] == [] and said["bare"][-1] == made.zone
            bare += 1
            continue
        assert said["proposals"][-1]["locks"] == value, f"network {seed}"
        losses = [len(p["loses"]) for p in said["proposals"]]
        locks = [p["locks"] for p in said["proposals"]]
        assert losses == sorted(losses) and locks == sorted(locks, reverse=True)
        for proposal in said["proposals"]:
            left = nx.MultiGraph((link["from"], link["to"]) for link in made.links if link["id"] not in proposal["lock"])
            left.add_nodes_from(graph)
            reached = nx.node_connected_component(left, made.zone)
            assert not any(n["kind"] == "source" and n["id"] in reached for n in made.nodes), f"network {seed}"
        cuts += 1
    print(f"{cuts} with a cut, {bare} without; up to {max(sizes)} nodes")
    assert max(sizes) > 1800 and cuts > 100 and bare > 20


# --- pandapower ------------------------------------------------------------------------------------------------------------------


def example_multivoltage():
    """pandapower's own example: 57 buses from 380 kV to 0.4 kV, 88 switches of all sorts."""
    from pandapower.networks import example_multivoltage

    return example_multivoltage()


def urban6():
    """simbench's low-voltage network 1-LV-urban6: 59 buses, 116 switches."""
    import simbench

    net = simbench.get_simbench_net("1-LV-urban6--0-sw")
    # A year of loads makes 10 MB that have nothing to do with what hangs together.
    del net["profiles"], net["loadcases"]
    return net


@pytest.mark.parametrize("make", [example_multivoltage, urban6], ids=lambda make: make.__name__)
def test_pandapower_agrees_which_buses_are_supplied(make, tmp_path: Path):
    """200 random switch states: with the open ones locked, the buses that are cut are those that pandapower calls unsupplied, first with
    all that feeds as a source, then with the grid alone."""
    import pandapower as pp
    from pandapower.topology import unsupplied_buses

    net = make()
    feeds = ["ext_grid", "gen", "sgen", "storage", "xward", "ward"]
    for table in (*feeds, "bus", "line", "trafo", "trafo3w", "load", "impedance"):
        assert net[table].in_service.all(), "what is out of service is a path for us and none for pandapower"
    for only in (feeds, ["ext_grid"]):
        for table in set(feeds) - set(only):
            net[table].drop(net[table].index, inplace=True)
        path = tmp_path / "net.json"
        pp.to_json(net, str(path))
        sources = {bus for table in feeds for bus in net[table].bus}
        zones = [word for bus in net.bus.index for word in ("--zone", f"bus {bus}")]
        r, seen = random.Random(7), set()
        for _ in range(STATES):
            # Most are closed, as they are in service; in some states most are open.
            closed = r.choice([0.98, 0.9, 0.7, 0.4])
            net.switch["closed"] = [r.random() < closed for _ in net.switch.index]
            locked = ",".join(f"switch {i}" for i in net.switch.index[~net.switch.closed])
            said = answer("check", path, *zones, "--locked", locked)
            cut = {bus for bus, check in zip(net.bus.index, said) if check["cut"]}
            assert not any(check["not_shown"] for check in said)
            assert cut == set(unsupplied_buses(net, slacks=sources))
            seen.add(len(cut))
        print(f"{make.__name__}, {len(sources)} buses with sources: {len(seen)} different numbers of buses cut, {min(seen)} to {max(seen)}")
        assert len(seen) > 10


# --- files -----------------------------------------------------------------------------------------------------------------------

SITE = {
    "nodes": [
        {"id": "grid", "kind": "source", "sort": "grid"},
        {"id": "gen", "kind": "source", "sort": "generator", "place": "yard, \"north\""},
        {"id": "B3", "kind": "board", "label": "Kitchen; cold side"},
        {"id": "C1", "kind": "load", "stops": "lighting 2", "tell": ["Porter", "Cook"], "circuit": True},
    ],
    "links": [
        {"id": "Q7", "from": "grid", "to": "B3", "kind": "switch", "lockable": True, "poles": ["L1", "L2", "L3", "N"]},
        {"id": "G1", "from": "gen", "to": "B3", "kind": "changeover", "lockable": True, "normally": "open", "poles": 4},
        {"id": "w1", "from": "B3", "to": "C1", "kind": "cable"},
    ],
}


def test_the_issues_words(tmp_path: Path):
    """The two commands with the shapes that were asked for."""
    path = tmp_path / "net.json"
    path.write_text(json.dumps(SITE), encoding="utf-8")
    said = answer("check", path, "--zone", "B3", "--locked", "Q7")
    assert (said["cut"], said["not_shown"], said["paths"]) == (False, [], [["gen", "G1", "B3"]])
    said = answer("check", path, "--zone", "B3", "--locked", "Q7,G1")
    assert (said["cut"], said["not_shown"], said["paths"]) == (True, [], [])
    said = answer("check", path, "--zone", "B3", "--locked", "Q7,G1,Q9")
    assert (said["cut"], said["not_shown"], said["paths"]) == (False, ["Q9"], [])
    said = answer("propose", path, "--zone", "B3")
    [proposal] = said["proposals"]
    assert {key: proposal[key] for key in ("lock", "loses", "locks")} == {"lock": ["Q7", "G1"], "loses": ["lighting 2"], "locks": 2}
    assert proposal["tell"] == ["Porter", "Cook"]


def test_csv_by_another_hand(tmp_path: Path):
    """What we write, Python's csv module reads (RFC 4180), and the other way round."""
    path = tmp_path / "net.json"
    path.write_text(json.dumps(SITE), encoding="utf-8")
    assert command("supply", "convert", path, "-o", tmp_path / "out.csv").code == 0
    nodes = list(csv.DictReader(io.StringIO((tmp_path / "out-nodes.csv").read_text(encoding="utf-8"), newline="")))
    links = list(csv.DictReader(io.StringIO((tmp_path / "out-links.csv").read_text(encoding="utf-8"), newline="")))
    assert nodes[1]["place"] == 'yard, "north"' and nodes[3]["tell"] == "Porter|Cook"
    assert (links[0]["poles"], links[1]["poles"], links[1]["normally"]) == ("L1|L2|L3|N", "4", "open")
    for name, rows in (("a.csv", nodes), ("b.csv", links)):
        with (tmp_path / name).open("w", encoding="utf-8", newline="") as file:
            writer = csv.DictWriter(file, rows[0].keys(), quoting=csv.QUOTE_ALL)
            writer.writeheader()
            writer.writerows(rows)
    back = tmp_path / "back.json"
    done = command("supply", "convert", "--nodes", tmp_path / "a.csv", "--links", tmp_path / "b.csv", "-o", back)
    assert done.code == 0, done.err
    assert json.loads(back.read_text(encoding="utf-8")) == with_defaults(SITE)


def with_defaults(site: dict) -> dict:
    """Our JSON always says whether a link takes a lock."""
    return site | {"links": [{"lockable": False} | link for link in site["links"]]}


def test_the_drawing_is_svg_with_its_words(tmp_path: Path):
    """Well-formed, nothing but shapes, and the whole of it in words."""
    path, out = tmp_path / "net.json", tmp_path / "net.svg"
    path.write_text(json.dumps(SITE), encoding="utf-8")
    done = command("supply", "draw", path, "--zone", "B3", "--locked", "Q7", "-o", out)
    assert done.code == 0, done.err
    root = ET.fromstring(out.read_text(encoding="utf-8"))
    space = "{http://www.w3.org/2000/svg}"
    assert {e.tag.removeprefix(space) for e in root.iter()} <= {"svg", "desc", "style", "rect", "line", "circle", "text"}
    words = root.find(f"{space}desc").text
    assert "G1 (a changeover, open, on an uncovered path)" in words and "Q7 (a switch, locked open)" in words
    texts = [e.text for e in root.iter(f"{space}text")]
    assert {"locked open", "uncovered", "work zone", "reaches the zone"} <= set(texts)


def test_the_schema_has_the_fields_of_the_answers(tmp_path: Path):
    """What the commands print is what the schema says."""
    path = tmp_path / "net.json"
    path.write_text(json.dumps(SITE), encoding="utf-8")
    for said, listed in [
        (answer("check", path, "--zone", "B3"), SCHEMA["$defs"]["check"]),
        (answer("propose", path, "--zone", "B3"), SCHEMA["$defs"]["propose"]),
        (answer("propose", path, "--zone", "B3")["proposals"][0], SCHEMA["$defs"]["propose"]["properties"]["proposals"]["items"]),
    ]:
        assert set(said) == set(listed["properties"]) == set(listed["required"])
