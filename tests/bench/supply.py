"""Check and propose on networks of 1,000 to 100,000 nodes, beside networkx and rustworkx.

    cargo build --release --locked && cargo build --release --locked -p stillbar-core --example supply_speed
    tests/.venv/bin/python tests/bench/supply.py [NODES ...]

Prints the rows for docs/benchmarks.md. Our times are taken inside the process, from the network in memory, and of the whole command from
its start to its end with the file read; those of the libraries from their graph in memory. rustworkx has no minimum cut between two nodes.
"""

import itertools
import json
import os
import random
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import networkx as nx
import rustworkx as rx
from support.desk import ROOT, binary
from support.peak import peak

TIMES = 5


def building(count: int, r: random.Random) -> tuple[dict, str, list[str]]:
    """Boards below boards, loads below them, one tie for twenty boards, three sources: as installations are. The zone is the main board, and the
    three sources are locked off, so that a check has to go through everything."""
    nodes = [{"id": "grid", "kind": "source"}, {"id": "gen", "kind": "source"}, {"id": "feeder 2", "kind": "source"}]
    links = []

    def join(a: str, b: str, kind: str = "switch", lockable: bool = True, normally: str = "closed") -> None:
        link = {"id": f"Q{len(links)}", "from": a, "to": b, "kind": kind}
        links.append(link | ({"lockable": lockable, "normally": normally} if kind != "cable" else {}))

    boards = ["B0"]
    nodes.append({"id": "B0", "kind": "board"})
    join("grid", "B0")
    join("gen", "B0", normally="open")
    while len(nodes) < count:
        on = boards[r.randrange(max(0, len(boards) - 400), len(boards))]
        if r.random() < 0.25:
            boards.append(f"B{len(boards)}")
            nodes.append({"id": boards[-1], "kind": "board"})
            join(on, boards[-1], lockable=r.random() < 0.9)
        else:
            nodes.append({"id": f"C{len(nodes)}", "kind": "load", "stops": f"circuit {len(nodes)}"})
            join(on, nodes[-1]["id"], lockable=r.random() < 0.9)
    join("feeder 2", boards[len(boards) // 3], normally="open")
    for _ in range(len(boards) // 20):
        join(*r.sample(boards, 2), kind="tie", normally="open")
    locked = [link["id"] for link in links if link["from"] in ("grid", "gen", "feeder 2")]
    return {"nodes": nodes, "links": links}, "B0", locked


def mesh(count: int, r: random.Random) -> tuple[dict, str, list[str]]:
    """A square of boards, each joined to its four neighbours by a switch, of which one in ten takes no lock; sources along one side. Harder
    than anything that is built: the minimum cut has many points. The zone is a board from which ten cables go out."""
    side = round(count**0.5)
    nodes = [{"id": f"N{i}", "kind": "source" if i < side and i % 3 == 0 else "board"} for i in range(side * side)]
    links = []
    for i in range(side * side):
        for j in [i + 1] * (i % side < side - 1) + [i + side] * (i < side * (side - 1)):
            link = {"id": f"Q{len(links)}", "from": f"N{i}", "to": f"N{j}", "kind": "switch"}
            links.append(link | {"lockable": r.random() < 0.9})
    middle = side * (side // 2) + side // 2
    step = min(2, (side // 2 - 1) // 10)
    for n in range(10):
        links.append({"id": f"w{n}", "from": f"N{middle}", "to": f"N{middle + (n + 1) * step * side}", "kind": "cable"})
    return {"nodes": nodes, "links": links}, f"N{middle}", []


def timed(work) -> tuple[float, object]:
    """The median of a few runs in milliseconds, and what came out."""
    took, out = [], None
    for _ in range(TIMES):
        began = time.perf_counter()
        out = work()
        took.append((time.perf_counter() - began) * 1000)
    return statistics.median(took), out


def by_networkx(net: dict, zone: str, locked: list[str]) -> tuple[float, float, int, bool]:
    """Milliseconds of a check and of a minimum cut, the cut, and whether the zone is cut."""
    open_links = set(locked)
    left = nx.Graph((link["from"], link["to"]) for link in net["links"] if link["id"] not in open_links)
    left.add_node(zone)
    sources = [n["id"] for n in net["nodes"] if n["kind"] == "source"]
    check_ms, reached = timed(lambda: nx.node_connected_component(left, zone))
    graph = nx.Graph()
    graph.add_edges_from((s, "all sources") for s in sources)
    for link in net["links"]:
        a, b = link["from"], link["to"]
        if not link.get("lockable"):
            graph.add_edge(a, b)
            graph[a][b].pop("capacity", None)
        elif not graph.has_edge(a, b):
            graph.add_edge(a, b, capacity=1)
        elif "capacity" in graph[a][b]:
            graph[a][b]["capacity"] += 1
    began = time.perf_counter()
    value = nx.minimum_cut_value(graph, zone, "all sources")
    return check_ms, (time.perf_counter() - began) * 1000, value, not any(s in reached for s in sources)


def by_rustworkx(net: dict, zone: str, locked: list[str]) -> float:
    """Milliseconds of a check."""
    open_links = set(locked)
    number = {n["id"]: i for i, n in enumerate(net["nodes"])}
    graph = rx.PyGraph()
    graph.add_nodes_from([n["id"] for n in net["nodes"]])
    graph.add_edges_from_no_data([(number[k["from"]], number[k["to"]]) for k in net["links"] if k["id"] not in open_links])
    return timed(lambda: rx.node_connected_component(graph, number[zone]))[0]


def main() -> None:
    """Both networks in every size."""
    counts = [int(word) for word in sys.argv[1:]] or [1_000, 10_000, 100_000]
    target = Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target"))
    print("| network | question | Stillbar, in the process | the whole command, peak memory | networkx | rustworkx |\n|---|---|---|---|---|---|")
    for make, count in itertools.product((building, mesh), counts):
        net, zone, locked = make(count, random.Random(8))
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "net.json"
            path.write_text(json.dumps(net), encoding="utf-8")
            words = [target / "release" / "examples" / "supply_speed", path, zone, ",".join(locked)]
            ours = json.loads(subprocess.run(words, capture_output=True, check=True, text=True).stdout)
            check = [peak(binary(), "supply", "check", path, "--zone", zone, "--locked", ",".join(locked), "--json") for _ in range(TIMES)]
            propose = [peak(binary(), "supply", "propose", path, "--zone", zone, "--json") for _ in range(TIMES)]
            said = json.loads(subprocess.run([binary(), "supply", "propose", path, "--zone", zone, "--json"], capture_output=True, check=True).stdout)
        their_check, their_cut, value, cut = by_networkx(net, zone, locked)
        fewest = said["proposals"][-1]["locks"]
        assert fewest == value, (fewest, value)
        name = f"{make.__name__}: {len(net['nodes']):,} nodes, {len(net['links']):,} links"
        whole = [f"{statistics.median(p.seconds for p in runs) * 1000:.0f} ms, {max(p.mb for p in runs):.0f} MB" for runs in (check, propose)]
        read = f"(reading the file: median {ours['read_ms'][0]:.0f} ms)"
        print(f"| {name} | check{', cut' if cut else ', not cut'} | median {ours['check_ms'][0]:.1f} ms, slowest {ours['check_ms'][1]:.1f} {read} | {whole[0]} | {their_check:.0f} ms | {by_rustworkx(net, zone, locked):.1f} ms |")
        front = f"{ours['proposals']} proposal{'' if ours['proposals'] == 1 else 's'}{'' if ours['complete'] else ', not complete'}, fewest locks {fewest}"
        print(f"| | propose: {front} | median {ours['propose_ms'][0]:.0f} ms, slowest {ours['propose_ms'][1]:.0f} | {whole[1]} | {their_cut:.0f} ms, the minimum cut alone | none |", flush=True)


if __name__ == "__main__":
    main()
