"""The crates of the project and the rooms inside each, as a graph whose arrows only point down.

Between crates the compiler allows no circle anyway; what is held here is which crate may stand on which, and that the pure ones name nothing
that touches a file, a thread, a socket, a clock or chance. Between the rooms of one crate (its top modules) the compiler allows everything:
there a circle is only where `CIRCLES` lists it, with a reason, and an entry that is not needed any more has to go. The graph is printed.
"""

import re
import subprocess
import tomllib
from pathlib import Path

import pytest

from support.desk import ROOT

MANIFESTS = {folder: tomllib.loads((ROOT / folder / "Cargo.toml").read_text())
             for folder in tomllib.loads((ROOT / "Cargo.toml").read_text())["workspace"]["members"]}  # fmt: skip
FOLDERS = {told["package"]["name"]: ROOT / folder for folder, told in MANIFESTS.items()}

# From the bottom up: a crate stands only on crates of lines above its own.
LAYERS = [
    {"stillbar-values"},
    {"stillbar-journal", "stillbar-media", "stillbar-protocol"},
    {"stillbar-rules"},
    {"stillbar-core"},
    {"stillbar-office", "stillbar-bridge"},
    {"stillbar-desk"},
]

# Values in, values out: no file, thread, socket, clock or chance of their own. `tests/run wasm` builds them where there is none of it.
PURE = ["stillbar-values", "stillbar-journal", "stillbar-media", "stillbar-protocol", "stillbar-rules"]
WORLDLY = re.compile(r"\bstd::(fs|net|thread|process|env|os)\b|\b(SystemTime|Instant)::now\b|\b(getrandom|rand|rusqlite|ureq|tokio)::")

# Rooms that stand in a circle, and why they still do. The list only gets shorter.
CIRCLES = {
    "stillbar-core": {
        frozenset({"app", "record", "screens", "sync"}): "the thread of the exchange turns the app's own state; screens look at the session, "
        "and a record takes its sentences from the screens until there is a room for text",
    },
    "stillbar-rules": {
        frozenset({"job", "site", "supply"}): "a job, what the jobs of its site share, and what the network says to it are told of each other"
    },
    "stillbar-desk": {frozenset({"render", "server"}): "the address of a picture names the size that the server gives it in"},
    "stillbar-office": {frozenset({"office", "photos"}): "an upload is a call of the office, which holds the store of photos"},
}


def named(code: str) -> set[str]:
    """What stands right behind `crate::`, also in a list of braces."""
    words = set(re.findall(r"\bcrate::([a-z]\w*)", code))
    for group in re.findall(r"\bcrate::\{(.*?)\};", code, re.DOTALL):
        while (flat := re.sub(r"\{[^{}]*\}", "", group)) != group:
            group = flat
        words |= {part.strip().split("::")[0] for part in group.split(",")}
    return words


def rooms(folder: Path) -> dict[str, set[str]]:
    """The top modules of a crate, and those that each names by `crate::`, in code and not in comments."""
    graph: dict[str, set[str]] = {}
    for file in sorted((folder / "src").rglob("*.rs")):
        way = file.relative_to(folder / "src").with_suffix("").parts
        code = re.sub(r"//.*", "", file.read_text())
        graph.setdefault(way[0], set()).update(named(code))
    graph.pop("main", None)
    return {room: {other for other in others if other in graph} - {room, "lib"} for room, others in graph.items() if room != "lib"}


def below(graph: dict[str, set[str]], start: str) -> set[str]:
    """Everything that can be reached from `start` by at least one arrow."""
    found, open_ = set(), [start]
    while open_:
        fresh = graph.get(open_.pop(), set()) - found
        found |= fresh
        open_ += fresh
    return found


def circles(graph: dict[str, set[str]]) -> set[frozenset[str]]:
    """The largest sets of nodes of which each reaches every other."""
    reach = {node: below(graph, node) for node in graph}
    return {frozenset({node} | {other for other in reach[node] if node in reach[other]}) for node in graph if node in reach[node]}


def test_a_circle_is_found():
    """A check of the check."""
    assert circles({"a": {"b"}, "b": {"c"}, "c": set()}) == set()
    assert circles({"a": {"b"}, "b": {"c"}, "c": {"b"}, "d": {"a"}}) == {frozenset("bc")}
    assert named("use crate::a::{B, C};\nuse crate::{d, e::{f, g}, h::i};") == {"a", "d", "e", "h"}


def needs(told: dict) -> set[str]:
    """The crates of ours that a manifest names; what only its tests need may point anywhere but at itself."""
    tables = [told, *told.get("target", {}).values()]
    return {name for table in tables for kind in ("dependencies", "build-dependencies") for name in table.get(kind, {}) if name in FOLDERS}


def test_crates_stand_on_what_is_below():
    height = {name: at for at, layer in enumerate(LAYERS) for name in layer}
    assert set(height) == set(FOLDERS), "a new crate gets its line in LAYERS"
    for told in sorted(MANIFESTS.values(), key=lambda told: height[told["package"]["name"]]):
        name = told["package"]["name"]
        print(f"{name} -> {', '.join(sorted(needs(told))) or 'nothing'}")
        wrong = {other for other in needs(told) if height[other] >= height[name]}
        assert not wrong, f"{name} stands on {wrong}, which is not below it"


@pytest.mark.parametrize("name", sorted(FOLDERS))
def test_rooms_stand_in_no_circle(name: str):
    graph = rooms(FOLDERS[name])
    for room, others in sorted(graph.items()):
        print(f"{name}: {room} -> {', '.join(sorted(others)) or 'nothing'}")
    assert circles(graph) == set(CIRCLES.get(name, {})), "break the new circle; one that is gone is taken out of the list"


@pytest.mark.parametrize("name", PURE)
def test_the_pure_crates_touch_nothing_outside(name: str):
    for file in sorted((FOLDERS[name] / "src").rglob("*.rs")):
        found = WORLDLY.search(re.sub(r"//.*", "", file.read_text()))
        assert not found, f"{file.relative_to(ROOT)}: {found and found[0]}"


def test_the_pure_crates_are_those_that_are_built_for_the_browser():
    run = (ROOT / "tests/run").read_text()
    (line,) = re.findall(r"cargo check .*--target wasm32-unknown-unknown (.*)", run)
    assert re.findall(r"-p (\S+)", line) == PURE
