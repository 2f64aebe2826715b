"""Supply networks made from a seed, and questions about them answered by trying everything. Nothing here knows how the core does it."""

import random
from dataclasses import dataclass

import numpy as np


@dataclass
class Made:
    """A network in the format of docs/formats.md, and the board to be worked on."""

    nodes: list[dict]
    links: list[dict]
    zone: str

    @property
    def file(self) -> dict:
        """What goes into NET.json."""
        return {"nodes": self.nodes, "links": self.links}


def small(seed: int, switches: int = 14) -> Made:
    """Up to 14 switches between boards, sources and loads. Half of the networks are chains with more and more ways towards the zone, where
    fewer locks cost more circuits."""
    r = random.Random(seed)
    chain = r.random() < 0.5
    sources = [f"S{i}" for i in range(r.randint(1, 2 if chain else 3))]
    boards = [f"B{i}" for i in range(r.randint(2, 4 if chain else 7))]
    loads = [f"C{i}" for i in range(r.randint(0, 6))]
    nodes = [{"id": s, "kind": "source"} for s in sources] + [{"id": b, "kind": "board"} for b in boards]
    nodes += [{"id": c, "kind": "load", "stops": f"stops {c}"} for c in loads]
    links: list[dict] = []

    def join(a: str, b: str, kind: str) -> None:
        link = {"id": f"{'Q' if kind == 'switch' else 'w'}{len(links)}", "from": a, "to": b, "kind": kind}
        if kind == "switch":
            link["lockable"] = r.random() < (0.95 if chain else 0.85)
            link["normally"] = "open" if r.random() < 0.25 else "closed"
        links.append(link)

    most = switches if chain else r.randint(1, switches)
    if chain:
        above = sources[0]
        for times, board in enumerate(boards, start=1):
            for _ in range(min(times, most - len(links))):
                join(above, board, "switch")
            above = board
        ways = [["switch"] * (most - len(links)), ["cable"] * len(loads)]
        for _ in ways[0]:
            join(*r.sample(sources + boards, 2), "switch")
        for load in loads:
            join(r.choice(boards), load, "cable")
    else:
        for _ in range(most):
            join(*r.sample(sources + boards + loads, 2), "switch")
        for _ in range(r.randint(0, 4)):
            join(*r.sample(sources + boards + loads, 2), "cable")
    return Made(nodes, links, boards[-1] if chain else r.choice(boards))


def large(seed: int) -> Made:
    """Boards in a random tree with more links across it, 10 to 2,000 nodes, of which some are sources; a third of the links takes no lock."""
    r = random.Random(seed)
    count = int(10 * 200 ** r.random())
    ids = [f"N{i}" for i in range(count)]
    sources = set(r.sample(ids[1:], r.randint(1, max(1, count // 50))))
    nodes = [{"id": i, "kind": "source" if i in sources else r.choice(["board", "board", "load"])} for i in ids]
    links = []

    def join(a: str, b: str) -> None:
        kind = r.choice(["switch", "switch", "cable"])
        link = {"id": f"L{len(links)}", "from": a, "to": b, "kind": kind}
        links.append(link | {"lockable": True, "normally": r.choice(["open", "closed"])} if kind == "switch" else link)

    for i in range(1, count):
        join(ids[i], ids[r.randrange(max(0, i - 20), i)])
    for _ in range(r.randint(0, 2 * count)):
        a = r.randrange(count)
        b = min(count - 1, max(0, a + r.randint(-25, 25)))
        if a != b:
            join(ids[a], ids[b])
    return Made(nodes, links, next(i for i in ids if i not in sources))


def front(made: Made) -> list[tuple[int, int]]:
    """The pairs of circuits lost and locks that no other pair beats, by flooding from each of all subsets of the switches at once."""
    number = {n["id"]: i for i, n in enumerate(made.nodes)}
    lockable = [link for link in made.links if link.get("lockable")]
    subsets = np.arange(1 << len(lockable), dtype=np.uint32)
    bit = {link["id"]: 1 << i for i, link in enumerate(lockable)}

    def flood(start: int, closed_only: bool) -> np.ndarray:
        reached = np.full(len(subsets), start, dtype=np.uint32)
        while True:
            before = reached.copy()
            for link in made.links:
                if closed_only and link.get("normally") == "open":
                    continue
                ends = np.uint32(1 << number[link["from"]] | 1 << number[link["to"]])
                locked = subsets & np.uint32(bit.get(link["id"], 0))
                reached = np.where((locked == 0) & (reached & ends != 0), reached | ends, reached)
            if (before == reached).all():
                return reached

    def which(kind: str) -> int:
        return sum(1 << number[n["id"]] for n in made.nodes if n["kind"] == kind)

    sources, loads = which("source"), which("load")
    cut = flood(1 << number[made.zone], False) & np.uint32(sources) == 0
    supplied = flood(sources, True) & np.uint32(loads)
    lost = np.bitwise_count(supplied[0] & ~supplied)
    pairs = sorted({(int(a), int(b)) for a, b in zip(lost[cut], np.bitwise_count(subsets)[cut])})
    best: list[tuple[int, int]] = []
    for pair in pairs:
        if not best or pair[1] < best[-1][1]:
            best.append(pair)
    return best
